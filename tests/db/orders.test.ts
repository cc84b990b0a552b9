import { afterAll, beforeAll, expect, test } from 'vitest';
import type { InputOf } from '../../core/contract/index.ts';
import { at, type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
const ids: string[] = [];

beforeAll(async () => {
  garage = await practiceShop({ zone: 'Europe/Berlin' });
  // Sunday night and Monday morning stand in two weeks; two of one instant are told apart by their id.
  for (const [when, plate, complaint] of [
    ['2024-12-31T10:00', 'OYB 902', 'Whines'],
    ['2026-03-08T22:30', 'KD 14', 'Pulls left'],
    ['2026-03-09T08:00', 'HAL 77', 'Service'],
    ['2026-03-09T08:00', 'ZED 1', 'Service'],
  ] as const) {
    garage.now = at(when);
    const order = await garage.did('Desk', 'order.book', {
      customer: { add: { name: `Måns ${plate}` } },
      car: { add: { plate, words: 'Oriel Estate', unit: 'km' } },
      ...{ complaint, here: true },
    });
    ids.push(order.id);
  }
  garage.now = at('2026-03-10T08:00');
});
afterAll(() => garage.end());

type Filter = InputOf<'order.weeks'>['filter'];
const ALL = { from: at('2000-01-01T00:00'), to: at('2100-01-01T00:00') };
const platesOf = async (filter: Filter) =>
  (await garage.did('Desk', 'order.page', { filter, ...ALL })).rows.map((row) => row.plate);

test('weeks are counted from Monday, the newest first', async () => {
  const { weeks, total } = await garage.did('Desk', 'order.weeks', { filter: { which: 'all' } });
  const { first, open } = await garage.did('Desk', 'order.counts', {});
  expect(weeks.map(({ n }) => n)).toEqual([2, 1, 1]);
  expect(weeks[0]?.from).toBe(weeks[1]?.to);
  expect([total, first, open]).toEqual([4, at('2024-12-31T10:00'), 4]);
  for (const { from, to, n } of weeks) {
    const { rows } = await garage.did('Desk', 'order.page', { filter: { which: 'all' }, from, to });
    expect(rows).toHaveLength(n);
  }
});

test('a year, a plate however written, a name without accents, words, a number', async () => {
  expect(await platesOf({ which: 'all', year: 2024 })).toEqual(['OYB 902']);
  expect(await platesOf({ which: 'all', text: 'oyb-9' })).toEqual(['OYB 902']);
  expect(await platesOf({ which: 'all', text: 'mans hal' })).toEqual(['HAL 77']);
  expect(await platesOf({ which: 'all', text: 'pulls' })).toEqual(['KD 14']);
  expect(await platesOf({ which: 'all', text: '1187' })).toEqual(['OYB 902']);
  expect(await platesOf({ which: 'all', text: '%' })).toHaveLength(4);
  expect(await platesOf({ which: 'past' })).toEqual([]);
  expect(await platesOf({ which: 'unpaid' })).toEqual([]);
});

test('page after page, none twice and none left out, two of one instant too', async () => {
  const seen: string[] = [];
  let before: { at: number; id: string } | null = null;
  do {
    const page: { rows: { id: string }[]; next: { at: number; id: string } | null } = await garage.did(
      'Desk',
      'order.page',
      { filter: { which: 'all' }, ...ALL, before, most: 1 },
    );
    seen.push(...page.rows.map((row) => row.id));
    before = page.next;
  } while (before !== null);
  expect(seen).toHaveLength(4);
  expect(new Set(seen)).toEqual(new Set(ids));
});

test('what is settled says so with what was invoiced, what is owed stands among the unpaid; a mechanic sees no sum', async () => {
  const id = ids[0] ?? '';
  const job = await garage.did('Desk', 'job.add', {
    orderId: id,
    job: { title: 'Look' },
    lines: [{ kind: 'labour', words: 'Look', quantity: 1000, unitPrice: 10_000 }],
  });
  await garage.did('Desk', 'decision.record', {
    orderId: id,
    jobs: [{ jobId: job.id, answer: 'yes' }],
    upTo: { total: 900_000 },
    spoken: { name: 'Måns', role: 'customer' },
    way: 'person',
  });
  const { toPay } = await garage.did('Desk', 'invoice.issue', { orderId: id });
  const { revision } = await garage.did('Desk', 'order.get', { id });
  expect(await platesOf({ which: 'unpaid' })).toEqual(['OYB 902']);
  await garage.did('Desk', 'payment.take', { orderId: id, kind: 'payment', way: 'card', amount: toPay });
  await garage.did('Desk', 'order.handOver', { id, revision, to: 'Måns' });
  const rowAs = async (name: string) =>
    (await garage.did(name, 'order.page', { filter: { which: 'past' }, ...ALL })).rows[0];
  const whole = await garage.did('Desk', 'order.get', { id });
  expect(await rowAs('Desk')).toMatchObject({ gross: toPay, titles: ['Look'], next: { what: whole.next.what } });
  expect(await rowAs('Runa')).toMatchObject({ gross: null });
  expect(await platesOf({ which: 'unpaid' })).toEqual([]);
});

test('a no is found again by its order', async () => {
  const id = ids[1] ?? '';
  const job = await garage.did('Desk', 'job.add', { orderId: id, job: { title: 'Track rod' }, lines: [] });
  expect(await platesOf({ which: 'refused' })).toEqual([]);
  await garage.did('Desk', 'decision.record', {
    orderId: id,
    jobs: [{ jobId: job.id, answer: 'no', risk: 'Tires wear' }],
    upTo: null,
    spoken: { name: 'Måns', role: 'customer' },
    way: 'person',
  });
  expect(await platesOf({ which: 'refused' })).toEqual(['KD 14']);
  expect((await garage.did('Desk', 'order.counts', {})).refused).toBe(1);
});

test('what came back, what waits for the lab, an old unit that is not back: each leads to its order until it is done', async () => {
  const id = ids[2] ?? '';
  const { car } = await garage.did('Desk', 'order.get', { id });
  const job = await garage.did('Desk', 'job.add', {
    orderId: id,
    job: { title: 'Alternator' },
    lines: [{ kind: 'core', words: 'Old alternator', quantity: 1000, unitPrice: 5000 }],
  });
  const sample = await garage.did('Runa', 'sample.draw', {
    ...{ orderId: id, jobId: null, step: null, unit: { name: 'Engine', serial: '' }, fluid: 'Oil', distance: null },
  });
  expect(await platesOf({ which: 'lab' })).toEqual(['HAL 77']);
  await garage.did('Desk', 'sample.result', {
    ...{ id: sample.id, revision: 1, on: '2026-03-10', remark: '' },
    result: { metals: [{ element: 'Fe', ppm: 9000 }] },
  });
  expect(await platesOf({ which: 'lab' })).toEqual([]);
  await garage.did('Desk', 'decision.record', {
    orderId: id,
    jobs: [{ jobId: job.id, answer: 'yes' }],
    upTo: { total: 900_000 },
    spoken: { name: 'Måns', role: 'customer' },
    way: 'person',
  });
  expect(await platesOf({ which: 'oldUnit' })).toEqual([]);
  const invoice = await garage.did('Desk', 'invoice.issue', { orderId: id });
  expect(await platesOf({ which: 'oldUnit' })).toEqual(['HAL 77']);
  const back = await garage.did('Desk', 'order.book', {
    ...{ customer: { id: (await garage.did('Desk', 'order.get', { id })).customer.id }, car: { id: car.id } },
    ...{ complaint: 'Lamp is on again', here: true },
  });
  await garage.did('Desk', 'comeback.add', {
    ...{
      orderId: back.id,
      firstJobId: job.id,
      title: 'Alternator again',
      kind: 'warranty',
      bearer: 'us',
      cause: 'part',
    },
  });
  expect(
    (await garage.did('Desk', 'order.page', { filter: { which: 'cameBack' }, ...ALL })).rows.map(({ id }) => id),
  ).toEqual([back.id]);
  expect(await garage.did('Desk', 'order.counts', {})).toMatchObject({ cameBack: 1, lab: 0, oldUnit: 1 });
  await garage.did('Desk', 'creditNote.issue', {
    ...{ invoicePaperId: invoice.paperId, reason: 'came back' },
    lines: [{ lineId: job.lineIds[0] ?? '', quantity: 1000 }],
  });
  expect(await garage.did('Desk', 'order.counts', {})).toMatchObject({ oldUnit: 0 });
});
