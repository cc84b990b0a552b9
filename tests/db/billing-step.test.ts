import { afterEach, beforeEach, expect, test } from 'vitest';
import { type PracticeShop, practiceShop } from './practice-shop.ts';
import { orderOf, printed, saidYes, setShop, sumsOf } from './sheet-orders.ts';

let garage: PracticeShop;
beforeEach(async () => {
  garage = await practiceShop({ supplies: { mode: 'itemise' }, taxes: [] });
});
afterEach(async () => {
  await garage.end();
});

test('76 clocked minutes at 96.00: by the tenth, by the quarter, up; the invoice keeps its own', async () => {
  const { id, jobs } = await orderOf(garage, [
    { kind: 'labour', words: 'Look for the noise', quantity: 0, unit: 'h', unitPrice: 9600, billing: 'clocked' },
  ]);
  const jobId = jobs[0]?.id ?? '';
  await saidYes(garage, id, [jobId], 20_000);
  await garage.did('Runa', 'clock.on', { jobId });
  garage.now += 76 * 60_000;
  await garage.did('Runa', 'clock.off', {});

  expect((await sumsOf(garage, id)).gross).toBe(12_480);
  await setShop(garage, { billing: { step: 250, way: 'nearest' } });
  expect((await sumsOf(garage, id)).gross).toBe(12_000);
  await setShop(garage, { billing: { step: 250, way: 'up' } });
  const sums = await sumsOf(garage, id);
  expect(sums).toMatchObject({ gross: 14_400, labourHours: 1500 });
  expect(sums.reckoning).toContainEqual({
    rule: 'line-clocked-up',
    on: { line: jobs[0]?.lineIds[0], quantity: 1500, unitPrice: 9600, minutes: 76, step: 250 },
    result: 14_400,
  });
  const close = await garage.did('Desk', 'closeOut.get', { orderId: id });
  expect(close.jobs[0]?.lines[0]?.charge).toMatchObject({ quantity: 1500, total: 14_400 });
  expect(close.jobs[0]?.hours.charged).toBe(1500);

  const invoice = await garage.did('Desk', 'invoice.issue', { orderId: id });
  expect(await printed(garage, invoice.paperId)).toMatch(/1\.50? h.*144\.00/s);
  await setShop(garage, { billing: { step: 100, way: 'nearest' } });
  expect(await sumsOf(garage, id)).toEqual(sums);
  expect((await garage.did('Desk', 'order.get', { id })).jobs[0]?.lines[0]?.charged).toBe(1500);
  expect((await garage.did('Odile', 'care.verify', {})).faults).toEqual([]);
});

test('two lines of labour as clocked in one job: its minutes are charged once, by the first of them', async () => {
  const clocked = { kind: 'labour', quantity: 0, unit: 'h', billing: 'clocked' } as const;
  const { id, jobs } = await orderOf(garage, [
    { ...clocked, words: 'Look for the noise', unitPrice: 9600 },
    { ...clocked, words: 'Mend it', unitPrice: 12_000 },
  ]);
  const jobId = jobs[0]?.id ?? '';
  const [first = ''] = jobs[0]?.lineIds ?? [];
  await saidYes(garage, id, [jobId], 20_000);
  await garage.did('Runa', 'clock.on', { jobId });
  garage.now += 60 * 60_000;
  await garage.did('Runa', 'clock.off', {});
  const charged = async () => {
    const { jobs: all, sums } = await garage.did('Desk', 'order.get', { id });
    return [...(all[0]?.lines ?? []).map((line) => [line.words, line.charged]), sums?.labourHours, sums?.gross];
  };
  expect(await charged()).toEqual([['Look for the noise', 1000], ['Mend it', 0], 1000, 9600]);
  // Without the first the other one charges them.
  await garage.did('Desk', 'line.takeOut', { id: first, revision: 1 });
  expect(await charged()).toEqual([['Mend it', 1000], 1000, 12_000]);
  await garage.did('Desk', 'line.putBack', { id: first, revision: 2 });
  await garage.did('Desk', 'line.give', { id: first, revision: 3, given: true });
  // Given hours are given, not charged by another line.
  expect(await charged()).toEqual([['Look for the noise', 1000], ['Mend it', 0], 0, 0]);
});
