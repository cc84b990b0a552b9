import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { discountRight } from '../../core/money/discount-limit.ts';
import { money } from '../../core/money/money.ts';
import { type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
beforeEach(async () => {
  garage = await practiceShop({ supplies: { mode: 'itemise' }, deskDiscount: 500 });
});
afterEach(async () => {
  await garage.end();
});

/** Labour of 432.00 and parts of 76.80: 508.80, as in the trade's notes on a desk limit of 5 %. */
async function sheet() {
  const { id } = await garage.did('Desk', 'order.book', {
    customer: { add: { name: 'Ilse Vandermeer' } },
    car: { add: { plate: 'KTB 4471', words: 'Corvane R', unit: 'km' } },
    complaint: 'It whines.',
    here: true,
  });
  const job = await garage.did('Desk', 'job.add', {
    orderId: id,
    job: { title: 'Swap' },
    lines: [
      { kind: 'labour', words: 'Fit', quantity: 4500, unit: 'h', unitPrice: 9600 },
      { kind: 'part', words: 'Seal', quantity: 2000, unitPrice: 3840, condition: 'new' },
    ],
  });
  return { id, job, labour: job.lineIds[0] ?? '', part: job.lineIds[1] ?? '' };
}

const held = (fits: number) => ({
  code: 'held',
  reasons: [{ what: 'discount-over-limit', with: { percent: 5, fits } }],
});

describe('what the desk may take off', () => {
  test('25.44 of 508.80 is inside, 30.00 asks the owner', async () => {
    const { id } = await sheet();
    const off = (sum: number) => ({ orderId: id, on: 'all' as const, reduction: { sum } });
    expect(await garage.refused('Desk', 'discount.add', off(3000))).toEqual(held(2544));
    expect((await garage.did('Desk', 'order.get', { id })).discounts).toEqual([]);
    await garage.did('Desk', 'discount.add', off(2544));
    expect(await garage.refused('Desk', 'discount.add', off(1))).toEqual(held(0));
    await garage.did('Odile', 'discount.add', off(3000));
    const { revision } = await garage.did('Odile', 'shop.get', {});
    await garage.did('Odile', 'shop.change', { revision, settings: { phone: '555-0101' } });
    expect((await garage.did('Odile', 'shop.get', {})).settings?.deskDiscount).toBe(500);
  });

  test('a line: percent or sum, together with its share of the sheet’s discount', async () => {
    const { id, labour, part } = await sheet();
    const cut = (discount: { bp: number } | { sum: number }) => ({ id: labour, revision: 1, change: { discount } });
    expect(await garage.refused('Desk', 'line.change', cut({ bp: 501 }))).toEqual(held(2160));
    expect(await garage.refused('Desk', 'line.change', cut({ sum: 2161 }))).toEqual(held(2160));
    await garage.did('Desk', 'discount.add', { orderId: id, on: 'labour', reduction: { sum: 1000 } });
    expect(await garage.refused('Desk', 'line.change', cut({ sum: 1500 }))).toEqual(held(1160));
    await garage.did('Desk', 'line.change', cut({ sum: 1160 }));
    await garage.did('Desk', 'line.change', { id: part, revision: 1, change: { discount: { bp: 500 } } });
  });

  test('what the owner gave stays when the desk changes the words, and is asked about when there is less work', async () => {
    const { labour } = await sheet();
    await garage.did('Odile', 'line.change', { id: labour, revision: 1, change: { discount: { sum: 10_000 } } });
    await garage.did('Desk', 'line.change', {
      id: labour,
      revision: 2,
      change: { words: 'Remove and fit', discount: { sum: 10_000 } },
    });
    expect(
      await garage.refused('Desk', 'line.change', { id: labour, revision: 3, change: { quantity: 2000 } }),
    ).toEqual(held(960));
  });

  test('a new line or job with a discount is held too, and nothing of it stays', async () => {
    const { id, job } = await sheet();
    const line = { kind: 'part' as const, words: 'Bush', quantity: 1000, unitPrice: 1000, discount: { bp: 900 } };
    expect(await garage.refused('Desk', 'line.add', { jobId: job.id, line })).toEqual(held(50));
    expect(
      await garage.refused('Desk', 'job.add', { orderId: id, job: { title: 'Later', offered: true }, lines: [line] }),
    ).toEqual(held(50));
    expect((await garage.did('Desk', 'order.get', { id })).jobs.map((one) => one.lines.length)).toEqual([2]);
  });
});

test('what fits is inside, and one more is not', () => {
  const minor = fc.integer({ min: 0, max: 1_000_000 });
  fc.assert(
    fc.property(minor, minor, fc.integer({ min: 0, max: 10_000 }), (full, others, limit) => {
      const right = (asked: number) =>
        discountRight({ full: money(full), off: money(others + asked), asked: money(asked) }, limit);
      const { fits } = right(0);
      if (fits > 0) expect(right(fits).inside).toBe(true);
      expect(right(fits + 1).inside).toBe(false);
    }),
  );
});
