import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type MoveFacts, nextMove } from '../../../core/order/next.ts';
import { next as sentences } from '../../../renderer/words/en/next.ts';

const MINUTE = 60_000;
/** Minutes after eight in the morning of an invented day. */
const at = (minutes: number) => Date.parse('2026-03-10T08:00Z') + minutes * MINUTE;
const NOW = at(240);

/** A car that came at ten past eight; nothing else is recorded. */
const ARRIVED: MoveFacts = {
  openedAt: at(0),
  arrivedAt: at(10),
  bookedFor: null,
  cancelledAt: null,
  handedOverAt: null,
  promiseAt: null,
  jobs: 0,
  findings: 0,
  unpriced: 0,
  held: 0,
  over: false,
  anyYes: false,
  quotedAt: null,
  quoteStands: false,
  quoteSent: false,
  triedAt: null,
  clockOnAt: null,
  clockedAt: null,
  forgottenClocks: 0,
  awaited: null,
  workDone: false,
  invoicedAt: null,
  balance: 0,
};
const quoted = { jobs: 2, held: 2, quotedAt: at(30), quoteStands: true };
const agreed = { jobs: 2, anyYes: true, quotedAt: at(30), quoteStands: true, quoteSent: true };
const awaited = { words: 'Carrier', supplier: 'Northgate Gears', orderedAt: at(40), late: false };
const billed = { ...agreed, clockedAt: at(180), workDone: true, invoicedAt: at(200) };

type Row = readonly [name: string, facts: Partial<MoveFacts>, whose: string, what: string, since: number];

/** Every rule of whose move it is, in the order in which they are asked. Common practice, no source. */
const TABLE: readonly Row[] = [
  ['invoiced, owed, the car still here', { ...billed, balance: 9_00 }, 'customer', 'pay-and-collect', at(200)],
  ['invoiced, owed, the car gone', { ...billed, balance: 9_00, handedOverAt: at(220) }, 'customer', 'pay', at(200)],
  ['invoiced, paid too much', { ...billed, balance: -9_00, handedOverAt: at(220) }, 'ours', 'give-back', at(200)],
  ['invoiced and paid', billed, 'customer', 'collect', at(200)],
  ['invoiced, paid and gone', { ...billed, handedOverAt: at(220) }, 'nobody', 'settled', at(220)],
  ['an invoice comes before a cancelling', { ...billed, cancelledAt: at(100) }, 'customer', 'collect', at(200)],
  ['a forgotten clock', { ...agreed, forgottenClocks: 1, clockedAt: at(90) }, 'ours', 'put-clock-right', at(90)],
  [
    'a forgotten clock after a cancelling',
    { forgottenClocks: 1, cancelledAt: at(99) },
    'ours',
    'put-clock-right',
    at(0),
  ],
  ['cancelled with work that has a yes', { ...agreed, cancelledAt: at(99) }, 'ours', 'close-out-cancelled', at(99)],
  ['cancelled with a deposit', { cancelledAt: at(99), balance: -5_00 }, 'ours', 'give-back', at(99)],
  ['cancelled, the car still here', { cancelledAt: at(99) }, 'customer', 'collect', at(99)],
  ['cancelled before it came', { arrivedAt: null, cancelledAt: at(99) }, 'nobody', 'cancelled', at(99)],
  ['cancelled and fetched', { cancelledAt: at(99), handedOverAt: at(120) }, 'nobody', 'cancelled', at(99)],
  ['gone without an invoice', { ...agreed, handedOverAt: at(120) }, 'ours', 'close-out', at(120)],
  ['gone without work', { handedOverAt: at(120) }, 'nobody', 'left-without-work', at(120)],
  ['gone without work, a deposit left', { handedOverAt: at(120), balance: -5_00 }, 'ours', 'give-back', at(120)],
  ['booked for tomorrow', { arrivedAt: null, bookedFor: NOW + 1 }, 'customer', 'bring-it-in', at(0)],
  ['to come, without a day', { arrivedAt: null }, 'customer', 'bring-it-in', at(0)],
  ['booked and did not come', { arrivedAt: null, bookedFor: NOW - 1 }, 'customer', 'was-expected', NOW - 1],
  [
    'found at work, no job yet',
    { ...agreed, findings: 1, unpriced: 1, clockOnAt: at(60) },
    'ours',
    'price-finding',
    at(60),
  ],
  [
    'found at work, no job yet, all else done',
    { ...agreed, findings: 2, unpriced: 1, clockedAt: at(180), workDone: true },
    'ours',
    'price-finding',
    at(180),
  ],
  ['worked on', { ...agreed, clockOnAt: at(60), clockedAt: at(50) }, 'ours', 'work-goes-on', at(60)],
  ['looked at, before any job', { clockOnAt: at(60) }, 'ours', 'looking', at(60)],
  ['looked at, every job held', { ...quoted, clockOnAt: at(60) }, 'ours', 'looking', at(60)],
  ['just come', {}, 'ours', 'find-out', at(10)],
  ['something found, no job', { findings: 1 }, 'ours', 'write-up-quote', at(10)],
  ['jobs, no quote', { jobs: 1, held: 1 }, 'ours', 'write-up-quote', at(10)],
  ['jobs that the quote does not name', { ...quoted, quoteStands: false }, 'ours', 'write-up-quote', at(10)],
  ['a quote nobody was told of', quoted, 'ours', 'send-quote', at(30)],
  ['a try before this quote told nobody of it', { ...quoted, triedAt: at(20) }, 'ours', 'send-quote', at(30)],
  ['a quote that was sent', { ...quoted, quoteSent: true }, 'customer', 'say-yes', at(30)],
  ['a quote, and a try to reach them', { ...quoted, triedAt: at(45) }, 'customer', 'say-yes', at(45)],
  ['a quote that was read out as it was made', { ...quoted, triedAt: at(30) }, 'customer', 'say-yes', at(30)],
  ['more found', { ...agreed, held: 1, quoteStands: false }, 'ours', 'ring-about-extra', at(10)],
  [
    'more found, rung without an answer',
    { ...agreed, held: 1, quoteStands: false, triedAt: at(70) },
    'ours',
    'ring-about-extra',
    at(70),
  ],
  ['more found and over', { ...agreed, held: 1, over: true, quoteStands: false }, 'ours', 'ring-about-extra', at(10)],
  ['more found, quoted and sent', { ...agreed, held: 1 }, 'customer', 'say-yes', at(30)],
  ['the same scope over the yes', { ...agreed, over: true, clockedAt: at(80) }, 'ours', 'ring-about-excess', at(80)],
  ['over comes before what is awaited', { ...agreed, over: true, awaited }, 'ours', 'ring-about-excess', at(10)],
  ['a part on its way', { ...agreed, awaited }, 'supplier', 'deliver', at(40)],
  ['a part on its way, all else done', { ...agreed, awaited, workDone: true }, 'supplier', 'deliver', at(40)],
  ['said yes to, not begun', agreed, 'ours', 'start-work', at(10)],
  ['begun, nobody on it', { ...agreed, clockedAt: at(90) }, 'ours', 'carry-on', at(90)],
  ['done', { ...agreed, clockedAt: at(180), workDone: true }, 'ours', 'close-out', at(180)],
  ['done without a clock', { ...agreed, workDone: true }, 'ours', 'close-out', at(10)],
];

describe('whose move it is', () => {
  test.each(TABLE)('%s', (_name, facts, whose, what, since) => {
    expect(nextMove({ ...ARRIVED, ...facts }, NOW)).toMatchObject({ whose, what, since });
  });

  test('the table names every next thing that the words know, and no other', () => {
    expect([...new Set(TABLE.map(([, , , what]) => what))].sort()).toEqual(Object.keys(sentences).sort());
  });

  test('what it says is said with its figures', () => {
    expect(nextMove({ ...ARRIVED, ...billed, balance: 9_00 }, NOW).with).toEqual({ balance: 9_00 });
    expect(nextMove({ ...ARRIVED, ...billed, balance: -9_00 }, NOW).with).toEqual({ balance: 9_00 });
    const late = { ...ARRIVED, ...agreed, awaited: { ...awaited, late: true } };
    expect(nextMove(late, NOW).with).toEqual({ words: 'Carrier', supplier: 'Northgate Gears', late: 1 });
  });
});

describe('a promise', () => {
  const promised = (promiseAt: number | null, more: Partial<MoveFacts> = {}) =>
    nextMove({ ...ARRIVED, promiseAt, ...more }, NOW).promise;

  test.each([
    ['none given', null, 'none'],
    ['91 minutes away', NOW + 91 * MINUTE, 'fine'],
    ['90 minutes away', NOW + 90 * MINUTE, 'soon'],
    ['this minute', NOW, 'soon'],
    ['a moment ago', NOW - 1, 'late'],
  ] as const)('%s', (_name, promiseAt, expected) => expect(promised(promiseAt)).toBe(expected));

  test('is over with the invoice, the hand-over and the cancelling', () => {
    for (const done of [{ invoicedAt: at(1) }, { handedOverAt: at(1) }, { cancelledAt: at(1) }])
      expect(promised(NOW - 1, done)).toBe('none');
  });
});

const instant = fc.integer({ min: at(0), max: NOW });
const maybe = fc.option(instant);
const anyFacts: fc.Arbitrary<MoveFacts> = fc
  .record({
    openedAt: fc.constant(at(0)),
    arrivedAt: maybe,
    bookedFor: fc.option(fc.integer({ min: at(0), max: NOW + 600 * MINUTE })),
    cancelledAt: maybe,
    handedOverAt: maybe,
    promiseAt: maybe,
    jobs: fc.nat({ max: 3 }),
    findings: fc.nat({ max: 2 }),
    unpriced: fc.nat({ max: 1 }),
    held: fc.nat({ max: 3 }),
    over: fc.boolean(),
    anyYes: fc.boolean(),
    quotedAt: maybe,
    quoteStands: fc.boolean(),
    quoteSent: fc.boolean(),
    triedAt: maybe,
    clockOnAt: maybe,
    clockedAt: maybe,
    forgottenClocks: fc.nat({ max: 1 }),
    awaited: fc.option(
      fc.record({ words: fc.string(), supplier: fc.string(), orderedAt: instant, late: fc.boolean() }),
    ),
    workDone: fc.boolean(),
    invoicedAt: maybe,
    balance: fc.integer({ min: -100, max: 100 }),
  })
  // A job that is not there cannot be held; before an invoice only deposits stand open.
  .map((facts) => ({
    ...facts,
    held: Math.min(facts.held, facts.jobs),
    balance: facts.invoicedAt === null ? Math.min(0, facts.balance) : facts.balance,
  }));

describe('for any facts', () => {
  test('exactly one has the move, and its words are there', () => {
    fc.assert(
      fc.property(anyFacts, (facts) => {
        const move = nextMove(facts, NOW);
        expect(['ours', 'customer', 'supplier', 'nobody'].filter((one) => one === move.whose)).toHaveLength(1);
        expect(Object.keys(sentences)).toContain(move.what);
        expect(nextMove({ ...facts }, NOW)).toEqual(move);
      }),
      { numRuns: 500 },
    );
  });

  test('since is an instant that is recorded', () => {
    fc.assert(
      fc.property(anyFacts, (facts) => {
        const recorded = [
          ...[facts.openedAt, facts.arrivedAt, facts.bookedFor, facts.cancelledAt, facts.handedOverAt],
          ...[facts.quotedAt, facts.triedAt, facts.clockOnAt, facts.clockedAt, facts.invoicedAt],
          facts.awaited?.orderedAt ?? null,
        ];
        const { since } = nextMove(facts, NOW);
        expect(recorded).toContain(since);
        expect(since).toBeLessThanOrEqual(NOW);
      }),
      { numRuns: 500 },
    );
  });

  test('nobody has the move only when the car is not here, no money is open and no clock was forgotten', () => {
    fc.assert(
      fc.property(anyFacts, (facts) => {
        if (nextMove(facts, NOW).whose !== 'nobody') return;
        expect(facts.arrivedAt === null || facts.handedOverAt !== null || facts.cancelledAt !== null).toBe(true);
        expect(facts.balance).toBe(0);
        expect(facts.invoicedAt !== null || facts.forgottenClocks === 0).toBe(true);
      }),
      { numRuns: 1000 },
    );
  });

  test('work without a yes is never ours to carry on with', () => {
    fc.assert(
      fc.property(anyFacts, (facts) => {
        const held = { ...facts, jobs: 2, held: 2, anyYes: false, over: false };
        expect(['start-work', 'carry-on', 'work-goes-on', 'deliver']).not.toContain(nextMove(held, NOW).what);
      }),
      { numRuns: 500 },
    );
  });
});
