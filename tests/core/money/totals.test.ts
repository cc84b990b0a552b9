import { describe, expect, test } from 'vitest';
import { creditedBase, reckonCredit } from '../../../core/money/credit.ts';
import { money } from '../../../core/money/money.ts';
import { rulesOf } from '../../../core/money/shop-rules.ts';
import { reckonSheet } from '../../../core/money/totals.ts';
import { everything, job, line, plain, sheet, tax } from './sheets.ts';

const percent = { mode: 'percent' as const, bp: 500, cap: money(2500), floor: money(100) };

describe('jobs', () => {
  test('a fixed price stands for its lines and is spread over them by value', () => {
    const lines = [line('work', 'labour', 9600, 2000), line('pads', 'part', 6400), line('free', 'fluid', 2000)];
    const totals = reckonSheet(
      sheet([
        job(
          'brakes',
          lines.map((it) => ({ ...it, given: it.id === 'free' })),
          { fixedPrice: money(20_000) },
        ),
      ]),
      { ...plain, taxes: { part: [tax('sales', 10)] } },
    );
    expect(totals.jobs.get('brakes')).toBe(20_000);
    expect(totals.lines.map(({ amount }) => amount)).toEqual([0, 0, 0]);
    expect(totals.lines.map(({ base }) => base)).toEqual([15_000, 5_000, 0]);
    expect(totals.tax).toBe(500);
    expect(totals.labourHours).toBe(2000);
  });

  test('a fixed price over lines of no value is labour', () => {
    const inside = [line('gasket', 'part', 0), line('work', 'labour', 0)];
    const rules = { ...plain, taxes: { labour: [tax('vat', 20)] } };
    for (const lines of [inside, [line('gasket', 'part', 0)], []]) {
      const totals = reckonSheet(sheet([job('menu', lines, { fixedPrice: money(10_000) })]), rules);
      expect([totals.net, totals.tax, totals.byKind.labour]).toEqual([10_000, 2_000, 10_000]);
      expect(totals.lines).toHaveLength(lines.length);
    }
  });

  test('a job that is given costs nothing, bears no supplies and counts no hours', () => {
    const totals = reckonSheet(
      sheet([job('goodwill', [line('work', 'labour', 9600)], { given: true, fixedPrice: money(9600) })]),
      { ...plain, supplies: percent },
    );
    expect([totals.gross, totals.supplies, totals.labourHours]).toEqual([0, 0, 0]);
    expect(totals.lines).toHaveLength(1);
  });
});

describe('supplies', () => {
  const of = (price: number, more = {}) =>
    reckonSheet(sheet([job('a', [{ ...line('work', 'labour', price), ...more }])]), { ...plain, supplies: percent });

  test('share, cap and floor of charged labour, once a sheet', () => {
    expect(of(43_200).supplies).toBe(2160);
    expect(of(90_000).supplies).toBe(2500);
    expect(of(1_000).supplies).toBe(100);
    expect(of(0).supplies).toBe(0);
    expect(of(43_200, { given: true }).supplies).toBe(0);
    expect(of(43_200, { discount: { bp: 5000 } }).supplies).toBe(1080);
  });

  test('of labour, of parts and fluids, or of both; never of outside work, fees, old units, or what a fixed price holds', () => {
    const lines = [
      line('work', 'labour', 10_000),
      line('pads', 'part', 6_000),
      line('oil', 'fluid', 2_000),
      line('grind', 'outside', 50_000),
      line('fee', 'fee', 50_000),
      line('old', 'core', 50_000),
      { ...line('free', 'part', 50_000), given: true },
    ];
    const menu = job('menu', [line('more', 'labour', 9600), line('disc', 'part', 9600)], { fixedPrice: money(12_000) });
    const on = (base: 'labour' | 'parts' | 'both') =>
      reckonSheet(sheet([job('a', lines), menu]), { ...plain, supplies: { ...percent, base } });
    // 5 % of 100.00, of 60.00 + 20.00, of all three.
    expect([on('labour').supplies, on('parts').supplies, on('both').supplies]).toEqual([500, 400, 900]);
    expect(on('both').reckoning).toContainEqual({
      rule: 'supplies-both',
      on: { both: 18_000, bp: 500, cap: 2500, floor: 100 },
      result: 900,
    });
  });

  test('over the counter nothing is worked on: a share of parts asks for nothing there', () => {
    const settings = { taxes: [], prices: 'exclusive', taxRounding: 'document' } as const;
    const sold = sheet([job('sale', [line('pads', 'part', 6_000)])]);
    const asked = (base: 'parts' | 'both', counter: boolean) =>
      reckonSheet(sold, rulesOf({ ...settings, supplies: { ...percent, base } }, counter)).supplies;
    expect([asked('parts', false), asked('both', false)]).toEqual([300, 300]);
    expect([asked('parts', true), asked('both', true)]).toEqual([0, 0]);
  });

  test('bear the tax of their own kind', () => {
    const rules = { ...plain, supplies: percent, taxes: { supplies: [tax('vat', 10)] } };
    const totals = reckonSheet(sheet([job('a', [line('work', 'labour', 10_000)])]), rules);
    expect([totals.supplies, totals.net, totals.tax]).toEqual([500, 10_500, 50]);
  });

  test('none on labour inside a fixed price: one price whatever it takes', () => {
    const menu = job('menu', [line('work', 'labour', 9_600)], { fixedPrice: money(12_000) });
    expect(reckonSheet(sheet([menu]), { ...plain, supplies: percent }).net).toBe(12_000);
  });
});

describe('discounts', () => {
  const lines = [line('work', 'labour', 10_000), line('pads', 'part', 20_000), line('oil', 'fluid', 5_000)];
  const off = (on: 'labour' | 'parts' | 'all', reduction: { bp: number } | { sum: ReturnType<typeof money> }) => ({
    on,
    reduction,
    words: 'a reason',
  });

  test('reach the kinds that they name', () => {
    const shares = (on: 'labour' | 'parts' | 'all') =>
      reckonSheet(sheet([job('a', lines)], { discounts: [off(on, { bp: 1000 })] }), plain).lines.map(
        ({ discountShare }) => discountShare,
      );
    expect(shares('labour')).toEqual([1000, 0, 0]);
    expect(shares('parts')).toEqual([0, 2000, 500]);
    expect(shares('all')).toEqual([1000, 2000, 500]);
  });

  test('come one after the other and never take more than there is', () => {
    const discounts = [off('all', { bp: 5000 }), off('labour', { sum: money(9_000) })];
    const totals = reckonSheet(sheet([job('a', lines)], { discounts }), plain);
    expect(totals.discount).toBe(17_500 + 5_000);
    expect(totals.lines.map(({ base }) => base)).toEqual([0, 10_000, 2_500]);
  });

  test('a line takes no more off than it is worth', () => {
    const one = { ...line('pads', 'part', 1_000), discount: { sum: money(5_000) } };
    expect(reckonSheet(sheet([job('a', [one])]), plain).gross).toBe(0);
  });
});

describe('taxes', () => {
  test('several at once, each by itself on the net', () => {
    const taxes = everything(tax('federal', 5), tax('province', 9.975));
    const totals = reckonSheet(sheet([job('a', [line('work', 'labour', 9_999)])]), { ...plain, taxes });
    expect(totals.taxes.map(({ amount }) => amount)).toEqual([500, 997]);
  });

  test('several held in one price are split by rate and lose nothing', () => {
    const taxes = everything(tax('federal', 5), tax('province', 9.975));
    const totals = reckonSheet(sheet([job('a', [line('work', 'labour', 10_000)])]), {
      ...plain,
      taxes,
      prices: 'inclusive',
    });
    expect(totals.tax).toBe(1302);
    expect(totals.taxes.map(({ amount }) => amount)).toEqual([435, 867]);
    expect(totals.net).toBe(8698);
  });

  test('a tax that kinds share is rounded once a document', () => {
    const both = [line('a', 'labour', 3), line('b', 'part', 3)];
    const vat = tax('vat', 20);
    const rules = { ...plain, taxes: { labour: [vat], part: [vat, tax('levy', 1)] } };
    expect(reckonSheet(sheet([job('a', both)]), rules).taxes[0]?.amount).toBe(1);
  });

  test('by line the lines carry their tax', () => {
    const lines = [line('a', 'part', 333), line('b', 'part', 333)];
    const totals = reckonSheet(sheet([job('a', lines)]), { ...plain, taxRounding: 'line' });
    expect(totals.lines.map(({ tax: own }) => own)).toEqual([67, 67]);
    expect(totals.tax).toBe(134);
  });

  test('an exempt customer bears none', () => {
    const totals = reckonSheet(sheet([job('a', [line('a', 'part', 333)])], { exempt: true }), plain);
    expect([totals.taxes, totals.tax, totals.gross]).toEqual([[], 0, 333]);
  });
});

test('every figure says how it came about', () => {
  const totals = reckonSheet(
    sheet([job('a', [{ ...line('work', 'labour', 9_600, 4_500), discount: { bp: 1000 } }])], {
      discounts: [{ on: 'all', reduction: { sum: money(1_000) }, words: 'a reason' }],
    }),
    { ...plain, supplies: percent },
  );
  const told = totals.reckoning.map(({ rule, result }) => [rule, result]);
  expect(told).toEqual([
    ['line-amount', 43_200],
    ['line-discount', 4_320],
    ['job-sum', 38_880],
    ['supplies', 1_944],
    ['sheet-discount', 1_000],
    ['discount-share', 952],
    ['discount-share', 48],
    ['tax-exclusive-by-document', 7_965],
    ['net', 39_824],
    ['tax', 7_965],
    ['gross', 47_789],
  ]);
});

describe('credit of a part quantity', () => {
  const oil = { id: 'oil', kind: 'fluid' as const, base: money(1_000), quantity: 3_000 };

  test('several credits of one line come to the line exactly', () => {
    const thirds = [0, 1_000, 2_000].map((creditedBefore) =>
      creditedBase({ ...oil, creditedBefore, creditNow: 1_000 }),
    );
    expect(thirds).toEqual([333, 334, 333]);
  });

  test('more than was billed is refused', () => {
    expect(() => creditedBase({ ...oil, creditedBefore: 2_500, creditNow: 501 })).toThrow(RangeError);
  });

  test('is taxed by the rules of the paper, without supplies', () => {
    const credit = reckonCredit(
      [{ ...oil, creditedBefore: 0, creditNow: 3_000 }],
      { ...plain, supplies: percent },
      false,
    );
    expect([credit.net, credit.tax, credit.gross]).toEqual([1_000, 200, 1_200]);
  });
});
