import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { InputOf, OutputOf } from '../../core/contract/index.ts';
import { at, type PracticeShop, practiceShop, SETTINGS } from '../db/practice-shop.ts';
import { bookIn, ITEMISED, invoice } from './played-shop.ts';

/** The yes, rule by rule, as it is recorded at the desk and held at the bench. 20 % tax; no supplies unless it says so. */
let garage: PracticeShop;
let orderId: string;

async function openWith(settings: Parameters<typeof practiceShop>[0] = {}): Promise<void> {
  garage = await practiceShop({ supplies: ITEMISED, ...settings });
  orderId = (await bookIn(garage)).id;
}
beforeEach(() => openWith());
afterEach(() => garage.end());

type JobFields = InputOf<'job.add'>['job'];

/** A job of one hour's labour at a price before tax. */
async function job(title: string, price: number, fields: Partial<JobFields> = {}) {
  const line = { kind: 'labour' as const, words: 'Work', quantity: 1000, unitPrice: price };
  const { id, lineIds } = await garage.did('Desk', 'job.add', { orderId, job: { title, ...fields }, lines: [line] });
  return { id, lineId: lineIds[0] ?? '' };
}

type Decision = InputOf<'decision.record'>;
const CUSTOMER = { name: 'Ilse Vandermeer', role: 'customer' } as const;
const decision = (answers: Record<string, 'yes' | 'no' | 'later'>, more: Partial<Decision> = {}): Decision => ({
  orderId,
  jobs: Object.entries(answers).map(([jobId, answer]) => ({ jobId, answer })),
  ...{ upTo: null, spoken: CUSTOMER, way: 'person' },
  ...more,
});
const said = (...what: Parameters<typeof decision>) => garage.did('Desk', 'decision.record', decision(...what));
const order = (): Promise<OutputOf<'order.get'>> => garage.did('Desk', 'order.get', { id: orderId });
const price = async (lineId: string, unitPrice: number) => {
  const line = (await order()).jobs.flatMap(({ lines }) => lines).find(({ id }) => id === lineId);
  await garage.did('Desk', 'line.change', { id: lineId, revision: line?.revision ?? 0, change: { unitPrice } });
};
/** What holds a clock of a mechanic on a job; nothing when it runs (and is stopped again). */
async function holds(jobId: string): Promise<string[]> {
  const caller = { personId: garage.people.get('Runa') ?? null, device: 'test' };
  const answer = await garage.shop.call('clock.on', { jobId }, caller, { at: garage.now });
  if (answer.ok) {
    await garage.did('Runa', 'clock.off', {});
    return [];
  }
  return answer.error.code === 'held' ? answer.error.reasons.map(({ what }) => what) : [answer.error.code];
}
const stops = async () =>
  (await order()).stops.map(({ what }) => what).filter((what) => what !== 'mileage-out-missing');

describe('before and after a yes', () => {
  test('reading, typing, ordering and quoting are free; a clock, a part and an invoice are held', async () => {
    const a = await job('Brakes', 10_000);
    const part = { number: 'CW-1', words: 'Pad', unit: '', price: 500, cost: 300, onHand: 4000 };
    const { id: partId } = await garage.did('Desk', 'part.add', part);
    const awaited = { lineId: a.lineId, kind: 'part' as const, supplier: 'Northgate Gears', dueOn: null };
    await garage.did('Desk', 'awaited.order', awaited);
    await garage.did('Desk', 'quote.issue', { orderId });
    await price(a.lineId, 9_000);
    expect(await holds(a.id)).toEqual(['job-without-yes']);
    const draw = { jobId: a.id, lineId: a.lineId, partId, quantity: 1000 };
    expect(await garage.refused('Runa', 'part.issue', draw)).toMatchObject({ code: 'held' });
    expect(await garage.refused('Desk', 'invoice.issue', { orderId })).toMatchObject({ code: 'held' });
    await said({ [a.id]: 'yes' }, { upTo: { total: 10_800 } });
    expect(await holds(a.id)).toEqual([]);
    await garage.did('Runa', 'part.issue', draw);
    expect(await stops()).toEqual([]);
  });

  test('scope never rides on money: room in the ceiling covers no other job', async () => {
    const [a, b] = [await job('Brakes', 10_000), await job('Wipers', 1_000)];
    await said({ [a.id]: 'yes' }, { upTo: { total: 900_000 } });
    expect(await holds(b.id)).toEqual(['job-without-yes']);
    expect(await stops()).toEqual(['job-without-yes']);
    expect((await order()).yes).toMatchObject({ held: [{ letter: 'B' }], heldSum: 1_200, coveredExcess: 0 });
    await price(b.lineId, 1_500);
  });

  test('a yes needs a sum, a no needs none and leaves the ceiling', async () => {
    const [a, b] = [await job('Brakes', 10_000), await job('Wipers', 1_000)];
    expect(await garage.refused('Desk', 'decision.record', decision({ [a.id]: 'yes' }))).toMatchObject({
      code: 'bad-input',
    });
    await said({ [a.id]: 'yes', [b.id]: 'yes' }, { upTo: { total: 13_200 } });
    expect(await said({ [b.id]: 'no' })).toMatchObject({ ceiling: null });
    // A declined job stands outside the sum, and is held.
    expect(await order()).toMatchObject({ yes: { ceiling: 13_200, onSheet: 12_000, inside: true } });
    expect(await holds(b.id)).not.toEqual([]);
    await said({ [b.id]: 'yes' }, { upTo: { total: 13_200 } });
    expect(await holds(b.id)).toEqual([]);
    expect((await order()).decisions).toHaveLength(3);
  });
});

describe('the sum', () => {
  test('"plus" is recorded as the old ceiling and so much more; a later total replaces it', async () => {
    const [a, b] = [await job('Brakes', 10_000), await job('Wipers', 1_000)];
    await said({ [a.id]: 'yes' }, { upTo: { total: 12_000 } });
    expect(await said({ [b.id]: 'yes' }, { upTo: { plus: 1_200 } })).toMatchObject({ ceiling: 13_200 });
    expect((await order()).yes.inside).toBe(true);
    await said({ [a.id]: 'yes' }, { upTo: { total: 13_000 } });
    expect(await order()).toMatchObject({ yes: { ceiling: 13_000, coveredExcess: 200, inside: false } });
    expect((await order()).decisions.map(({ ceiling }) => ceiling)).toEqual([12_000, 13_200, 13_000]);
  });

  test('covered jobs are held one minor unit over it, and the invoice with them', async () => {
    const a = await job('Brakes', 10_000);
    await said({ [a.id]: 'yes' }, { upTo: { total: 12_000 } });
    await price(a.lineId, 10_001);
    expect(await holds(a.id)).toEqual(['beyond-the-yes']);
    expect(await stops()).toEqual(['over-the-yes']);
    await price(a.lineId, 10_000);
    expect(await holds(a.id)).toEqual([]);
    await invoice(garage, orderId);
  });

  test('never more than the most that the customer wants to spend', async () => {
    const a = await job('Brakes', 10_000);
    const { revision } = await order();
    await garage.did('Desk', 'order.change', { id: orderId, revision, change: { ownMaximum: 12_500 } });
    const over = decision({ [a.id]: 'yes' }, { upTo: { total: 12_501 } });
    expect(await garage.refused('Desk', 'decision.record', over)).toMatchObject({
      reasons: [{ what: 'over-own-maximum', with: { maximum: 12_500 } }],
    });
    await said({ [a.id]: 'yes' }, { upTo: { total: 12_500 } });
  });

  test('fees and discounts are reckoned anew for the covered jobs', async () => {
    await garage.end();
    await openWith({ supplies: { mode: 'percent', bp: 500, cap: 800, floor: null, sentence: '' } });
    const [a, b] = [await job('Brakes', 10_000), await job('Gearbox', 30_000)];
    await garage.did('Desk', 'discount.add', { orderId, on: 'all', reduction: { sum: 500 } });
    // (100.00 + 5.00 supplies - 5.00 discount) and 20 % tax.
    await said({ [a.id]: 'yes' }, { upTo: { total: 12_000 } });
    expect(await order()).toMatchObject({
      yes: { coveredTotal: 12_000, coveredExcess: 0, onSheet: (40_000 + 800 - 500) * 1.2, held: [{ jobId: b.id }] },
    });
    expect(await holds(a.id)).toEqual([]);
  });
});

describe('the allowance of the local rule, for drift of the same scope', () => {
  const overrun = { ...SETTINGS.overrun, mode: 'pct' as const, bp: 1000 };

  test.each([
    ['inside', 11_000, false],
    ['inside', 11_001, true],
    ['outside', 10_999, false],
    ['outside', 11_000, true],
  ] as const)('the edge is %s: %i before tax for a yes to 120.00', async (edge, now, over) => {
    await garage.end();
    await openWith({ overrun: { ...overrun, edge } });
    const a = await job('Brakes', 10_000);
    await said({ [a.id]: 'yes' }, { upTo: { total: 12_000 } });
    await price(a.lineId, now);
    // A mechanic is not shown by how much.
    expect(await holds(a.id)).toEqual(over ? ['beyond-the-yes'] : []);
    expect(await stops()).toEqual(over ? ['over-the-yes'] : []);
  });

  test('it makes no room for another job', async () => {
    await garage.end();
    await openWith({ overrun });
    const [a, b] = [await job('Brakes', 10_000), await job('Wipers', 100)];
    await said({ [a.id]: 'yes' }, { upTo: { total: 12_000 } });
    expect([await holds(a.id), await holds(b.id)]).toEqual([[], ['job-without-yes']]);
  });

  test('a rule before tax measures its sums before tax', async () => {
    await garage.end();
    await openWith({ overrun: { ...overrun, mode: 'lesser', bp: 5000, fixed: 500, base: 'net' } });
    const a = await job('Brakes', 10_000);
    await said({ [a.id]: 'yes' }, { upTo: { total: 12_000 } });
    await price(a.lineId, 10_500);
    expect(await holds(a.id)).toEqual([]);
    await price(a.lineId, 10_501);
    expect(await holds(a.id)).toEqual(['beyond-the-yes']);
  });
});

describe('whose yes', () => {
  const owner = { name: 'Odile', role: 'owner' } as const;
  const byOwner = (answers: Record<string, 'yes'>) => decision(answers, { upTo: { total: 12_000 }, spoken: owner });

  test.each(['warranty', 'goodwill', 'internal'] as const)('%s work at 0.00 needs the owner’s', async (kind) => {
    const a = await job('Again', 10_000, { kind });
    expect(await holds(a.id)).toEqual(['job-without-yes']);
    const byCustomer = decision({ [a.id]: 'yes' }, { upTo: { total: 0 } });
    expect(await garage.refused('Desk', 'decision.record', byCustomer)).toMatchObject({
      reasons: [{ what: 'free-work-needs-owner' }],
    });
    // The desk cannot speak for the owner.
    expect(await garage.refused('Desk', 'decision.record', byOwner({ [a.id]: 'yes' }))).toMatchObject({
      code: 'not-allowed',
    });
    await garage.did('Odile', 'decision.record', byOwner({ [a.id]: 'yes' }));
    expect(await holds(a.id)).toEqual([]);
    expect(await order()).toMatchObject({ sums: { gross: 0 }, yes: { inside: true } });
  });

  test('the owner’s covers nothing that the customer pays for', async () => {
    const a = await job('Brakes', 10_000);
    expect(await garage.refused('Odile', 'decision.record', byOwner({ [a.id]: 'yes' }))).toMatchObject({
      reasons: [{ what: 'charged-work-needs-customer', with: { letter: 'A' } }],
    });
    const [found] = (await order()).jobs;
    const give = { id: a.id, revision: found?.revision ?? 0, given: true, why: 'Our fault' };
    await garage.did('Odile', 'job.give', give);
    expect(await holds(a.id)).toEqual(['job-without-yes']);
    await garage.did('Odile', 'decision.record', byOwner({ [a.id]: 'yes' }));
    expect(await holds(a.id)).toEqual([]);
  });

  test('another payer’s names who spoke and for whom; without one there is nobody to speak', async () => {
    const a = await job('Brakes', 10_000);
    const fleet = { name: 'Marta Oyelaran', role: 'payer' } as const;
    const spoken = decision({ [a.id]: 'yes' }, { upTo: { total: 12_000 }, spoken: fleet });
    expect(await garage.refused('Desk', 'decision.record', spoken)).toMatchObject({
      reasons: [{ what: 'nobody-else-pays' }],
    });
    const payer = await garage.did('Desk', 'customer.add', { name: 'Harbour Fleet', poRequired: true });
    const { revision } = await order();
    await garage.did('Desk', 'order.change', { id: orderId, revision, change: { payerId: payer.id } });
    await garage.did('Desk', 'decision.record', spoken);
    expect(await order()).toMatchObject({ decisions: [{ spoken: fleet, takenBy: 'Desk' }], payer: { id: payer.id } });
    // Their account wants a purchase order number: the invoice waits for it, the work does not.
    expect(await holds(a.id)).toEqual([]);
    expect(await stops()).toEqual(['po-missing']);
  });

  test('somebody whom the customer named, up to their sum', async () => {
    const a = await job('Brakes', 10_000);
    const { customer } = await order();
    const { revision } = await garage.did('Desk', 'customer.get', { id: customer.id });
    const mayYes = [{ name: 'Per Halloran', upTo: 12_000 }];
    await garage.did('Desk', 'customer.change', { id: customer.id, revision, change: { mayYes } });
    const by = (name: string, total: number) =>
      decision({ [a.id]: 'yes' }, { upTo: { total }, spoken: { name, role: 'named' } });
    expect(await garage.refused('Desk', 'decision.record', by('Tove Brandt', 100))).toMatchObject({
      reasons: [{ what: 'not-named', with: { name: 'Tove Brandt' } }],
    });
    expect(await garage.refused('Desk', 'decision.record', by('Per Halloran', 12_001))).toMatchObject({
      reasons: [{ what: 'over-their-limit', with: { upTo: 12_000 } }],
    });
    await garage.did('Desk', 'decision.record', by('Per Halloran', 12_000));
    expect(await holds(a.id)).toEqual([]);
  });
});

describe('how it was said', () => {
  test('by phone with the number, signed with the signature, never in time to come', async () => {
    const a = await job('Brakes', 10_000);
    const yes = { upTo: { total: 12_000 } };
    for (const more of [{ way: 'phone' }, { way: 'signed' }, { at: garage.now + 1 }] as const)
      expect(
        await garage.refused('Desk', 'decision.record', decision({ [a.id]: 'yes' }, { ...yes, ...more })),
      ).toMatchObject({
        code: 'bad-input',
      });
    const earlier = garage.now - 60 * 60_000;
    await said({ [a.id]: 'yes' }, { ...yes, way: 'phone', reached: '555-0142', at: earlier });
    expect((await order()).decisions).toMatchObject([
      { at: earlier, recordedAt: garage.now, lateBy: 'Desk', reached: '555-0142' },
    ]);
  });

  test('a no to what is unsafe needs a signature, with the risk that was told', async () => {
    const a = await job('Brakes', 10_000);
    const no = { jobs: [{ jobId: a.id, answer: 'no' as const, risk: 'The pad is on the metal.', unsafe: true }] };
    expect(await garage.refused('Desk', 'decision.record', { ...decision({}), ...no })).toMatchObject({
      reasons: [{ what: 'unsafe-no-needs-signature' }],
    });
    const strokes: [number, number][][] = [
      [
        [10, 10],
        [200, 40],
      ],
    ];
    await garage.did('Desk', 'decision.record', { ...decision({}), ...no, way: 'signed', strokes });
    expect((await order()).decisions).toMatchObject([
      { jobs: [{ answer: 'no', unsafe: true, risk: 'The pad is on the metal.' }] },
    ]);
  });
});

test('a yes to look covers the diagnosis and nothing that it finds', async () => {
  const look = await job('Find out', 8_000);
  await said({ [look.id]: 'yes' }, { upTo: { total: 9_600 } });
  garage.now = at('2026-03-10T09:00');
  expect(await holds(look.id)).toEqual([]);
  const found = await job('Wheel bearing', 20_000);
  expect(await holds(found.id)).toEqual(['job-without-yes']);
  expect(await holds(look.id)).toEqual([]);
});
