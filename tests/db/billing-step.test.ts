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
