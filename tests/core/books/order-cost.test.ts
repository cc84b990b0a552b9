import { describe, expect, test } from 'vitest';
import { type CostedLine, orderCost } from '../../../core/books/order-cost.ts';
import { profitOf } from '../../../core/money/margin.ts';
import { money } from '../../../core/money/money.ts';

const line = (kind: CostedLine['kind'], quantity: number, more: Partial<CostedLine> = {}): CostedLine => ({
  kind,
  quantity,
  unitCost: null,
  issued: null,
  billed: null,
  ...more,
});

describe('what an order cost', () => {
  // The closed centrepiece, T45 (tests/trade/scenarios.json): costs 1394.30, profit 787.20 of 2181.50, 36.1 %.
  test('the swap: parts and outside 1273.30 with the spilt oil, pay 121.00', () => {
    const cost = orderCost(
      [
        line('labour', 4500),
        line('part', 1000, { unitCost: 120_000, billed: 115_000 }),
        line('part', 2000, { unitCost: 800 }),
        line('part', 8000, { unitCost: 999, issued: 1280 }),
        line('fluid', 1350, { issued: 945 }),
        line('part', 2000, { unitCost: 1000 }),
        line('outside', 1000, { unitCost: 2800 }),
        line('core', 1000, { unitCost: 35_000 }),
        line('part', 1000, { unitCost: 3600 }),
      ],
      money(105),
      // Pay of 121.00, here as one hour.
      [{ minutes: 60, payRate: money(12_100) }],
    );
    expect(cost).toEqual({ parts: 124_425, outside: 2800, stray: 105, pay: 12_100, total: 139_430, unknown: 0 });
    expect(profitOf(money(218_150), cost.total)).toMatchObject({ profit: 78_720, marginX10: 361 });
  });

  test('what nobody knows the cost of is counted, not guessed', () => {
    const lines = [
      line('part', 1000),
      line('fluid', 500),
      line('outside', 1000),
      line('fee', 1000),
      line('labour', 1000),
    ];
    expect(orderCost(lines, money(0), [])).toMatchObject({ total: 0, unknown: 3 });
  });
});
