import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { markupsOf, offeredPrice } from '../../core/money/offered-price.ts';
import { type PracticeShop, practiceShop } from './practice-shop.ts';
import { orderOf, printed, saidYes, setShop, sumsOf } from './sheet-orders.ts';

let garage: PracticeShop;
beforeEach(async () => {
  garage = await practiceShop({ supplies: { mode: 'itemise' }, taxes: [] });
});
afterEach(async () => {
  await garage.end();
});

/** The trade's bands: up to 10.00 100 %, to 50.00 70 %, to 200.00 45 %, to 1000.00 30 %, above 25 % (T26). */
const BANDS = [
  { upTo: 1000, bp: 10_000 },
  { upTo: 5000, bp: 7000 },
  { upTo: 20_000, bp: 4500 },
  { upTo: 100_000, bp: 3000 },
  { upTo: null, bp: 2500 },
];
const part = (unitCost: number | null, unitPrice: number | null = null) =>
  ({ kind: 'part', words: 'Seal', quantity: 1000, unitPrice, unitCost, condition: 'new' }) as const;

describe('a line without a price takes the markup on its cost', () => {
  test('with the guard and without (T26), a typed price stands, the paper has it', async () => {
    await setShop(garage, { partsMarkup: { bands: BANDS, guard: false } });
    const { id, jobs } = await orderOf(garage, []);
    const jobId = jobs[0]?.id ?? '';
    for (const cost of [1000, 1001, 5000, 5001, 115_000])
      await garage.did('Odile', 'line.add', { jobId, line: part(cost) });
    await setShop(garage, { partsMarkup: { bands: BANDS, guard: true } });
    for (const cost of [1001, 5001]) await garage.did('Odile', 'line.add', { jobId, line: part(cost) });
    await garage.did('Odile', 'line.add', { jobId, line: part(1000, 1850) });
    const lines = (await garage.did('Odile', 'order.get', { id })).jobs[0]?.lines ?? [];
    expect(lines.map((line) => line.unitPrice)).toEqual([2000, 1702, 8500, 7251, 143_750, 2000, 8500, 1850]);

    // The sheet keeps its prices when the bands move, and so do the invoice and its print.
    const { gross } = await sumsOf(garage, id);
    await setShop(garage, { partsMarkup: null });
    expect((await sumsOf(garage, id)).gross).toBe(gross);
    await saidYes(garage, id, [jobId], gross);
    const invoice = await garage.did('Desk', 'invoice.issue', { orderId: id });
    expect(await printed(garage, invoice.paperId)).toMatch(/1,437\.50/);
  });

  test('outside work: 35.00 on 28.00 and 95.00 on 80.00, 25 % and at most 15.00 (T44)', async () => {
    await setShop(garage, { outsideMarkup: { bp: 2500, limit: 1500 } });
    const { id, jobs } = await orderOf(garage, []);
    for (const unitCost of [2800, 8000])
      await garage.did('Odile', 'line.add', {
        jobId: jobs[0]?.id ?? '',
        line: { kind: 'outside', words: 'Lab', quantity: 1000, unitPrice: null, unitCost },
      });
    const lines = (await garage.did('Odile', 'order.get', { id })).jobs[0]?.lines ?? [];
    expect(lines.map((line) => line.unitPrice)).toEqual([3500, 9500]);
  });

  test('where there is no markup or no cost, the price is asked for and nothing is written', async () => {
    const { id, jobs } = await orderOf(garage, []);
    const refused = { code: 'bad-input', fields: [{ path: 'line.unitPrice', problem: 'price-needed' }] };
    const jobId = jobs[0]?.id ?? '';
    expect(await garage.refused('Odile', 'line.add', { jobId, line: part(1000) })).toMatchObject(refused);
    await setShop(garage, { partsMarkup: { bands: BANDS, guard: true } });
    expect(await garage.refused('Odile', 'line.add', { jobId, line: part(null) })).toMatchObject(refused);
    expect((await garage.did('Desk', 'order.get', { id })).jobs[0]?.lines).toEqual([]);
  });
});

test('bands that do not rise, or do not end open, are refused', async () => {
  const { revision } = await garage.did('Odile', 'shop.get', {});
  for (const bands of [BANDS.slice(0, 2), BANDS.toReversed(), [BANDS[0], BANDS[0], BANDS[4]]])
    expect(
      await garage.refused('Odile', 'shop.change', { revision, settings: { partsMarkup: { bands, guard: true } } }),
    ).toMatchObject({ code: 'bad-input', fields: [{ problem: 'bands-not-rising' }] });
});

test('labour, fees and old units are offered nothing', () => {
  const markups = markupsOf({ partsMarkup: { bands: BANDS, guard: true }, outsideMarkup: { bp: 0, limit: null } });
  for (const kind of ['labour', 'fee', 'core', 'supplies'] as const)
    expect(offeredPrice(kind, 1000, markups)).toBeNull();
});
