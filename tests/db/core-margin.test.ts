import { expect, test } from 'vitest';
import { practiceShop } from './practice-shop.ts';
import { orderOf, setShop } from './sheet-orders.ts';

// 1000.00 for the carrier and 350.00 for the old one, 20 %: in either way of prices 1000.00 of it is earned.
test.each([
  ['exclusive', 100_000, 35_000],
  ['inclusive', 120_000, 42_000],
] as const)('prices %s: what an old unit is charged is no sale, with or without its tax', async (prices, unit, old) => {
  const garage = await practiceShop({ supplies: { mode: 'itemise' }, prices });
  try {
    const { id } = await orderOf(garage, [
      { kind: 'part', words: 'Carrier', quantity: 1000, unitPrice: unit, unitCost: 70_000, condition: 'rebuilt' },
      { kind: 'core', words: 'Old carrier', quantity: 1000, unitPrice: old },
    ]);
    const margin = async () => (await garage.did('Odile', 'closeOut.get', { orderId: id })).margin;
    expect(await margin()).toMatchObject({ sold: 100_000, cost: 70_000, profit: 30_000, marginX10: 300 });
    // Where the charge bears no tax, all of it is the charge.
    await setShop(garage, { coreTax: { way: 'none', bp: 0, source: '', checkedOn: null } });
    expect((await margin())?.sold).toBe(100_000);
  } finally {
    await garage.end();
  }
});
