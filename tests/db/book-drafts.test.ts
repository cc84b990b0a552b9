import { afterEach, beforeEach, expect, test } from 'vitest';
import { bookJob } from './bench-job.ts';
import { type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
beforeEach(async () => {
  garage = await practiceShop();
});
afterEach(() => garage.end());

const wrongOrder = bookJob([
  { do: 'Drain', plug: 'drained' },
  { do: 'Fill plug', plug: 'fill-opened' },
]);
const right = bookJob([
  { do: 'Fill plug', plug: 'fill-opened' },
  { do: 'Drain', plug: 'drained' },
]);
const tight = { pattern: 'ring' as const, count: 5, stages: [{ Nm: 20 }] };
const save = (content: typeof right, more: { id?: string; basedOn?: number; draft?: boolean } = {}) =>
  garage.did('Desk', 'jobBook.save', { id: null, basedOn: 0, content, ...more });
const listed = async (id: string) => (await garage.did('Desk', 'jobBook.list', {})).rows.find((row) => row.id === id);
const order = async () =>
  (
    await garage.did('Desk', 'order.book', {
      customer: { add: { name: 'Per Halloran', phone: '555-0177' } },
      car: { add: { plate: 'OYB 902', words: 'Oriel Estate', unit: 'km' } },
      ...{ complaint: 'Pulls left.', here: true },
    })
  ).id;

test.each([
  ['a wrong order of the plugs', wrongOrder, { step: 1, rule: 'drain-before-fill' }],
  [
    'a figure without a source',
    bookJob([{ do: 'Cover', torque: tight }], { sourceOfFigures: '' }),
    { step: 1, rule: 'torque-without-source' },
  ],
])('%s keeps a version from the bench, and may be kept as a draft', async (_words, content, why) => {
  expect(await garage.refused('Desk', 'jobBook.save', { id: null, basedOn: 0, content })).toEqual({
    code: 'held',
    reasons: [{ what: 'procedure-wrong', with: why }],
  });
  const kept = await save(content, { draft: true });
  expect(kept).toMatchObject({ version: 1, inUse: 0, warnings: [{ rule: why.rule }] });
  expect(await listed(kept.id)).toMatchObject({ version: 0, draft: 1 });
  const put = { orderId: await order(), bookJobId: kept.id };
  expect(await garage.refused('Desk', 'job.fromBook', put)).toMatchObject({ reasons: [{ what: 'procedure-draft' }] });
});

test('what only warns may go to the bench', async () => {
  const once = bookJob([{ do: 'Cover', torque: { ...tight, stages: [{ Nm: 20 }, { Nm: 10 }] } }]);
  expect(await save(once)).toMatchObject({ inUse: 1, warnings: [{ rule: 'stage-lower', keepsFromBench: false }] });
});

test('while a draft is written the bench gets the version before it, under its own title', async () => {
  const { id } = await save(right);
  const draft = { ...wrongOrder, title: 'Oil, another way' };
  expect(await save(draft, { id, basedOn: 1, draft: true })).toMatchObject({ version: 2, inUse: 1 });
  expect(await listed(id)).toMatchObject({ version: 1, draft: 2 });
  expect(await garage.did('Desk', 'jobBook.get', { id })).toMatchObject({ version: 2, inUse: 1, content: draft });
  expect(await garage.did('Desk', 'jobBook.get', { id, used: true })).toMatchObject({ version: 1, content: right });
  const orderId = await order();
  await garage.did('Desk', 'job.fromBook', { orderId, bookJobId: id });
  const { jobs } = await garage.did('Desk', 'order.get', { id: orderId });
  expect(jobs[0]).toMatchObject({ title: right.title, steps: [{ n: 1 }, { n: 2 }] });
  const stale = { id, basedOn: 1, content: right, draft: false };
  expect(await garage.refused('Desk', 'jobBook.save', stale)).toMatchObject({ code: 'changed-meanwhile' });
  expect(await save(right, { id, basedOn: 2 })).toMatchObject({ version: 3, inUse: 3 });
  expect(await listed(id)).toMatchObject({ version: 3, draft: null });
});
