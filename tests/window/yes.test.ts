import { afterEach, beforeEach, expect, test } from 'vitest';
import { movedJob, versionSaidYesTo } from '../../renderer/sheet/yes/moved.ts';
import { reckonHere } from '../../renderer/sheet/yes/reckon-here.ts';
import { type PracticeShop, practiceShop, SETTINGS } from '../db/practice-shop.ts';

let garage: PracticeShop;
beforeEach(async () => {
  garage = await practiceShop();
});
afterEach(async () => {
  await garage.end();
});

const SETTLED = { ...SETTINGS, supplies: SETTINGS.supplies };

/** Two jobs that share taking apart, one offered, a sheet discount. */
async function booked() {
  const { id } = await garage.did('Desk', 'order.book', {
    customer: { add: { name: 'Ilse Vandermeer', phone: '555-0142' } },
    car: { add: { plate: 'KTB 4471', words: 'Corvane R', unit: 'km' } },
    complaint: 'It whines.',
    mileage: 42_180,
    here: true,
  });
  const a = await garage.did('Desk', 'job.add', {
    orderId: id,
    job: { title: 'Swap' },
    lines: [
      { kind: 'labour', words: 'Remove and fit', quantity: 3600, unit: 'h', unitPrice: 9600 },
      { kind: 'part', words: 'Carrier', quantity: 1000, unitPrice: 145_000, discount: { bp: 500 } },
      { kind: 'fluid', words: 'Gear oil', quantity: 1350, unit: 'L', unitPrice: 2400 },
    ],
  });
  const b = await garage.did('Desk', 'job.add', {
    orderId: id,
    job: { title: 'Seal', offered: true },
    lines: [
      {
        kind: 'labour',
        words: 'Seal',
        quantity: 0,
        unit: 'h',
        unitPrice: 9600,
        billing: 'book',
        book: 1500,
        overlap: 1000,
        overlapJobId: a.id,
      },
      { kind: 'part', words: 'Output seal', quantity: 1000, unitPrice: 1875 },
    ],
  });
  await garage.did('Desk', 'discount.add', { orderId: id, on: 'parts', reduction: { bp: 250 } });
  return { id, a, b };
}

test('sums reckoned in the window are those of the shop, before and after a yes to what was offered', async () => {
  const { id, a, b } = await booked();
  const before = await garage.did('Desk', 'order.get', { id });
  const asIs = reckonHere(before, SETTLED, (job) => job.answer);
  expect(asIs?.whole.gross).toBe(before.sums?.gross);
  const withBoth = reckonHere(before, SETTLED, () => 'yes');
  await garage.did('Desk', 'decision.record', {
    orderId: id,
    jobs: [
      { jobId: a.id, answer: 'yes' },
      { jobId: b.id, answer: 'yes' },
    ],
    upTo: { total: 900_000 },
    spoken: { name: 'Ilse Vandermeer', role: 'customer' },
    way: 'person',
  });
  const after = await garage.did('Desk', 'order.get', { id });
  expect(withBoth?.whole.gross).toBe(after.sums?.gross);
  expect(withBoth?.covered.gross).toBe(after.yes.coveredTotal);
  expect(after.sums?.gross).not.toBe(before.sums?.gross);
});

test('nothing is reckoned for whoever may not see prices', async () => {
  const { id } = await booked();
  const order = await garage.did('Runa', 'order.get', { id });
  expect(reckonHere(order, SETTLED, (job) => job.answer)).toBeNull();
  expect(await garage.did('Runa', 'quote.list', { orderId: id })).toEqual({ quotes: [] });
});

test('against the version that a yes answered: what moved, what is gone, what is new, the rest counted', async () => {
  const { id, a, b } = await booked();
  const quote = await garage.did('Desk', 'quote.issue', { orderId: id });
  await garage.did('Desk', 'decision.record', {
    orderId: id,
    quotePaperId: quote.paperId,
    jobs: [{ jobId: a.id, answer: 'yes' }],
    upTo: { total: quote.gross },
    spoken: { name: 'Ilse Vandermeer', role: 'customer' },
    way: 'person',
  });
  const [labour, carrier, oil] = a.lineIds;
  await garage.did('Desk', 'line.change', { id: oil ?? '', revision: 1, change: { quantity: 1450 } });
  await garage.did('Desk', 'line.takeOut', { id: carrier ?? '', revision: 1 });
  const order = await garage.did('Desk', 'order.get', { id });
  const { quotes } = await garage.did('Desk', 'quote.list', { orderId: id });
  expect(quotes.map((one) => [one.version, one.gross])).toEqual([[1, quote.gross]]);
  const since = versionSaidYesTo(order, quotes);
  const [first, second] = order.jobs.map((job) => movedJob(order, job, since, null));
  expect(first?.same).toEqual({ count: 1, amount: order.jobs[0]?.lines.find((line) => line.id === labour)?.amount });
  expect(first?.moved).toEqual([
    {
      id: oil,
      words: 'Gear oil',
      unit: 'L',
      was: { lineId: oil, words: 'Gear oil', unit: 'L', quantity: 1350, amount: 3240 },
      now: { quantity: 1450, amount: 3480 },
    },
    {
      id: carrier,
      words: 'Carrier',
      unit: '',
      was: { lineId: carrier, words: 'Carrier', unit: '', quantity: 1000, amount: 137_750 },
      now: null,
    },
  ]);
  expect(second).toMatchObject({ isNew: true, was: null, job: { id: b.id } });
  expect(second?.moved).toHaveLength(2);
});

test('a yes that answered no quote is compared job by job with what was said then', async () => {
  const { id, a } = await booked();
  await garage.did('Desk', 'decision.record', {
    orderId: id,
    jobs: [{ jobId: a.id, answer: 'yes' }],
    upTo: { total: 900_000 },
    spoken: { name: 'Ilse Vandermeer', role: 'customer' },
    way: 'person',
  });
  const said = await garage.did('Desk', 'order.get', { id });
  const [same] = said.jobs.map((job) => movedJob(said, job, versionSaidYesTo(said, []), null));
  expect(same).toMatchObject({ isNew: false, moved: [], same: { count: 3 }, was: said.jobs[0]?.amount });
  await garage.did('Desk', 'line.change', { id: a.lineIds[2] ?? '', revision: 1, change: { quantity: 1450 } });
  const order = await garage.did('Desk', 'order.get', { id });
  const [moved] = order.jobs.map((job) => movedJob(order, job, null, null));
  expect((moved?.now ?? 0) - (moved?.was ?? 0)).toBe(240);
});

test('hours shared with a job come back where that job is declined on the form', async () => {
  const { id, a, b } = await booked();
  const order = await garage.did('Desk', 'order.get', { id });
  const [, seal] = order.jobs;
  if (seal === undefined) throw new Error('the second job stands on the sheet');
  const hours = (answers: Record<string, 'yes' | 'no'>) => {
    const here = reckonHere(order, SETTLED, (job) => answers[job.id] ?? job.answer);
    return movedJob(order, seal, null, here).moved.find((line) => line.words === 'Seal')?.now?.quantity;
  };
  expect(hours({ [a.id]: 'yes', [b.id]: 'yes' })).toBe(500);
  expect(hours({ [a.id]: 'no', [b.id]: 'yes' })).toBe(1500);
});
