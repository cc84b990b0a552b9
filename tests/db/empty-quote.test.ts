import { afterEach, beforeEach, expect, test } from 'vitest';
import { type PracticeShop, practiceShop } from './practice-shop.ts';

// A quote that says nothing is held; one over nothing goes out where something in it is free.
let garage: PracticeShop;
let orderId = '';
beforeEach(async () => {
  garage = await practiceShop();
  ({ id: orderId } = await garage.did('Desk', 'order.book', {
    customer: { add: { name: 'Per Halloran', phone: '555-0177' } },
    car: { add: { plate: 'OYB 902', words: 'Oriel Estate', unit: 'km' } },
    complaint: 'Pulls left.',
    here: false,
  }));
});
afterEach(() => garage.end());

const job = (kind: 'charged' | 'warranty' | 'goodwill' | 'internal', unitPrice: number | null = null) =>
  garage.did('Desk', 'job.add', {
    orderId,
    job: { title: 'Look', kind },
    lines: unitPrice === null ? [] : [{ kind: 'labour', words: 'Look', quantity: 1000, unitPrice }],
  });
const decline = (jobId: string) =>
  garage.did('Desk', 'decision.record', {
    ...{ orderId, jobs: [{ jobId, answer: 'no' }], upTo: null },
    ...{ spoken: { name: 'Per Halloran', role: 'customer' }, way: 'person' },
  });
const refusal = async () => (await garage.refused('Desk', 'quote.issue', { orderId })) as { reasons?: unknown };

test('with no job, with a job without lines, and with lines at nothing', async () => {
  expect((await refusal()).reasons).toEqual([{ what: 'nothing-on-the-sheet', with: {} }]);
  await job('charged');
  expect((await refusal()).reasons).toEqual([{ what: 'quote-empty', with: {} }]);
  await job('charged', 0);
  expect((await refusal()).reasons).toEqual([{ what: 'quote-empty', with: {} }]);
  await job('charged', 9000);
  expect(await garage.did('Desk', 'quote.issue', { orderId })).toMatchObject({ version: 1 });
});

test('with every job declined, until one more is asked about', async () => {
  await decline((await job('charged', 9000)).id);
  expect((await refusal()).reasons).toEqual([{ what: 'quote-declined', with: {} }]);
  await job('charged');
  expect((await refusal()).reasons).toEqual([{ what: 'quote-empty', with: {} }]);
});

test.each(['warranty', 'goodwill', 'internal'] as const)('%s work at nothing can be quoted', async (kind) => {
  await job(kind, 9000);
  expect(await garage.did('Desk', 'quote.issue', { orderId })).toMatchObject({ version: 1, gross: 0 });
});

test('so can a line and a job that are given', async () => {
  const given = await job('charged', 9000);
  const [line] = (await garage.did('Desk', 'order.get', { id: orderId })).jobs[0]?.lines ?? [];
  const turned = { given: true, why: 'Came back for it' };
  await garage.did('Desk', 'line.give', { id: line?.id ?? '', revision: line?.revision ?? 0, ...turned });
  expect(await garage.did('Desk', 'quote.issue', { orderId })).toMatchObject({ gross: 0 });
  expect(given.letter).toBe('A');
});
