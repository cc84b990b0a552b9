import { afterAll, beforeAll, expect, test } from 'vitest';
import { at, type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
beforeAll(async () => {
  garage = await practiceShop();
});
afterAll(() => garage.end());

/** A visit with a job of the book that has a yes. */
async function visit(carId: string | null) {
  const order = await garage.did('Desk', 'order.book', {
    customer: { add: { name: 'Per Halloran' } },
    car: carId === null ? { add: { plate: 'OYB 902', words: 'Oriel Estate', unit: 'km' } } : { id: carId },
    ...{ complaint: 'Oil.', here: true, mileage: 61_000 },
  });
  const { rows } = await garage.did('Desk', 'jobBook.list', {});
  const job = await garage.did('Desk', 'job.fromBook', { orderId: order.id, bookJobId: rows[0]?.id ?? '' });
  return { ...order, jobId: job.id };
}

const sayYes = (orderId: string, jobId: string) =>
  garage.did('Desk', 'decision.record', {
    ...{ orderId, jobs: [{ jobId, answer: 'yes' as const }], upTo: { total: 900_000 }, way: 'person' as const },
    spoken: { name: 'Per Halloran', role: 'customer' },
  });

const axle = { name: 'Rear axle', serial: 'rd-4127x' };
const oil = { unit: axle, fluid: 'gear oil 75W-90' };

test('fluid goes in by litres, quarts and strokes, and comes back as last time', async () => {
  const first = await visit(null);
  // Held until there is a yes.
  const half = { ...oil, jobId: first.jobId, direction: 'in' as const, amount: { value: 500, in: 'L' as const } };
  expect(await garage.refused('Runa', 'fluid.record', half)).toMatchObject({
    code: 'held',
    reasons: [{ what: 'job-without-yes' }],
  });
  await sayYes(first.id, first.jobId);

  const pump = await garage.did('Runa', 'pump.add', { name: 'Blue pump' });
  const pumped = { ...half, amount: { strokes: 30, pumpId: pump.id } };
  expect(await garage.refused('Runa', 'fluid.record', pumped)).toMatchObject({
    fields: [{ path: 'amount.pumpId', problem: 'not-calibrated' }],
  });
  // Invented: 53 strokes gave 1.060 L, 20 mL a stroke.
  await garage.did('Runa', 'pump.calibrate', { pumpId: pump.id, strokes: 53, quantity: 1060 });
  const { rows: pumps } = await garage.did('Runa', 'pump.list', {});
  expect(pumps).toMatchObject([{ name: 'Blue pump', calibration: { perStroke: 20_000, by: 'Runa' } }]);

  expect((await garage.did('Runa', 'fluid.record', pumped)).quantity).toBe(600);
  expect(
    (await garage.did('Runa', 'fluid.record', { ...half, amount: { strokes: 25, pumpId: pump.id } })).quantity,
  ).toBe(500);
  // NIST SP 811 (2008) B.8: a US liquid quart is 0.9463529 L.
  const quart = await garage.did('Runa', 'fluid.record', { ...half, amount: { value: 1000, in: 'US qt' } });
  expect(quart.quantity).toBe(946);
  await garage.did('Runa', 'fluid.undo', { id: quart.id });
  expect(await garage.refused('Runa', 'fluid.undo', { id: quart.id })).toMatchObject({
    fields: [{ problem: 'undone-already' }],
  });
  const { rows } = await garage.did('Runa', 'fluid.list', { orderId: first.id });
  expect(rows.map(({ quantity, undone }) => [quantity, undone])).toEqual([
    [600, false],
    [500, false],
    [946, true],
  ]);

  // The visit in hand is not a last time of itself.
  const ask = (jobId: string, unit: typeof axle | null = axle) =>
    garage.did('Runa', 'fluid.lastTimes', { jobId, step: null, unit });
  expect((await ask(first.jobId)).rows).toEqual([]);
  garage.now += 3_600_000;
  const second = await visit(first.carId);
  expect((await ask(second.jobId)).rows).toMatchObject([
    { same: 'unit', orderNumber: first.number, quantity: 1100, strokes: 55, pump: 'Blue pump', mileage: 61_000 },
  ]);
  // A new serial is another unit; the same name on this car is not offered for it.
  expect((await ask(second.jobId, { name: 'Rear axle', serial: 'OTHER' })).rows).toMatchObject([{ same: 'job' }]);
  expect((await ask(second.jobId, { name: 'rear AXLE', serial: '' })).rows).toMatchObject([{ same: 'car' }]);
  expect((await ask((await visit(null)).jobId, null)).rows).toMatchObject([{ same: 'job', quantity: 1100 }]);
});

test('the level rule of the step comes along', async () => {
  const { jobId } = await visit(null);
  const { rows } = await garage.did('Desk', 'jobBook.list', {});
  const { content } = await garage.did('Desk', 'jobBook.get', { id: rows[0]?.id ?? '' });
  for (const { n, level } of content.steps)
    expect((await garage.did('Runa', 'fluid.lastTimes', { jobId, step: n, unit: null })).level).toBe(level);
  expect(await garage.refused('Runa', 'fluid.lastTimes', { jobId, step: 199, unit: null })).toMatchObject({
    code: 'not-found',
  });
});

test('what came out stands in the used-oil log, by day of the shop and with its totals', async () => {
  const { id, jobId } = await visit(null);
  await sayYes(id, jobId);
  const drain = (fluid: string, value: number) =>
    garage.did('Runa', 'fluid.record', { ...oil, fluid, jobId, direction: 'out', amount: { value, in: 'L' } });
  garage.now = at('2026-04-01T23:30');
  await drain('gear oil', 1200);
  garage.now = at('2026-04-02T00:30');
  await drain('gear oil', 900);
  const wrong = await drain('brake fluid', 300);
  await drain('brake fluid', 250);
  garage.now = at('2026-04-05T08:00');
  await garage.did('Runa', 'fluid.undo', { id: wrong.id });
  const log = await garage.did('Desk', 'fluid.usedOil', { from: '2026-04-02', to: '2026-04-02' });
  expect(log.rows.map(({ on, quantity }) => [on, quantity])).toEqual([
    ['2026-04-02', 900],
    ['2026-04-02', 250],
  ]);
  expect(log).toMatchObject({
    total: 1150,
    byFluid: [
      { fluid: 'brake fluid', quantity: 250 },
      { fluid: 'gear oil', quantity: 900 },
    ],
  });
  expect((await garage.did('Desk', 'fluid.usedOil', { from: '2026-04-01', to: '2026-04-02' })).total).toBe(2350);
  expect(await garage.refused('Desk', 'fluid.usedOil', { from: '2026-04-02', to: '2026-04-01' })).toMatchObject({
    fields: [{ path: 'to', problem: 'before-from' }],
  });
});
