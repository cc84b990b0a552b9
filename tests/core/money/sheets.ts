import fc from 'fast-check';
import {
  LINE_KINDS,
  type MoneyRules,
  type Reduction,
  type Sheet,
  type SheetDiscount,
  type SheetJob,
  type SheetLine,
  type Tax,
} from '../../../core/money/line.ts';
import { type Money, money } from '../../../core/money/money.ts';

/** A tax by its percentage. */
export const tax = (id: string, percent: number): Tax => ({ id, name: id, ratePpm: Math.round(percent * 10_000) });

export const everything = (...taxes: readonly Tax[]): MoneyRules['taxes'] =>
  Object.fromEntries(LINE_KINDS.map((kind) => [kind, taxes]));

/** Plain rules: one tax of 20 % on top, by document, no supplies. */
export const plain: MoneyRules = {
  taxes: everything(tax('vat', 20)),
  prices: 'exclusive',
  taxRounding: 'document',
  supplies: { mode: 'itemise' },
};

export const line = (id: string, kind: SheetLine['kind'], unitPrice: number, quantity = 1000): SheetLine => ({
  id,
  kind,
  quantity,
  unitPrice: money(unitPrice),
  given: false,
});

export const job = (id: string, lines: readonly SheetLine[], more: Partial<SheetJob> = {}): SheetJob => ({
  id,
  lines,
  given: false,
  ...more,
});

export const sheet = (jobs: readonly SheetJob[], more: Partial<Sheet> = {}): Sheet => ({
  jobs,
  discounts: [],
  exempt: false,
  ...more,
});

const amount = (min: number, max: number): fc.Arbitrary<Money> => fc.integer({ min, max }).map(money);

const reductions: fc.Arbitrary<Reduction> = fc.oneof(
  fc.record({ bp: fc.integer({ min: 0, max: 10_000 }) }),
  fc.record({ sum: amount(0, 200_000) }),
);

const lines: fc.Arbitrary<SheetLine> = fc.record({
  id: fc.uuid(),
  kind: fc.constantFrom(...LINE_KINDS),
  quantity: fc.integer({ min: 0, max: 20_000 }),
  unitPrice: amount(-50_000, 200_000),
  given: fc.boolean(),
  discount: fc.option(reductions, { nil: undefined }),
  exchange: fc.boolean(),
});

const jobs: fc.Arbitrary<SheetJob> = fc.record({
  id: fc.uuid(),
  lines: fc.array(lines, { maxLength: 6 }),
  fixedPrice: fc.option(amount(0, 500_000), { nil: undefined }),
  given: fc.boolean(),
});

const discounts: fc.Arbitrary<SheetDiscount> = fc.record({
  on: fc.constantFrom('labour', 'parts', 'all'),
  reduction: reductions,
  words: fc.constant('a reason'),
});

/** Any sheet: credits, given lines, fixed prices, discounts one over the other. */
export const anySheet: fc.Arbitrary<Sheet> = fc.record({
  jobs: fc.array(jobs, { maxLength: 5 }),
  discounts: fc.array(discounts, { maxLength: 3 }),
  exempt: fc.boolean(),
});

const taxes: fc.Arbitrary<Tax> = fc
  .tuple(fc.constantFrom('a', 'b', 'c'), fc.constantFrom(0, 50_000, 82_500, 88_750, 99_750, 190_000, 200_000))
  .map(([id, ratePpm]) => ({ id: `${id}${ratePpm}`, name: id, ratePpm }));

/** Any rules: several taxes at once on some kinds, none on others. */
export const anyRules: fc.Arbitrary<MoneyRules> = fc.record({
  taxes: fc.dictionary(
    fc.constantFrom(...LINE_KINDS),
    fc.uniqueArray(taxes, { maxLength: 3, selector: ({ id }) => id }),
  ) as fc.Arbitrary<MoneyRules['taxes']>,
  prices: fc.constantFrom('exclusive', 'inclusive'),
  taxRounding: fc.constantFrom('document', 'line'),
  supplies: fc.oneof(
    fc.constant({ mode: 'itemise' as const }),
    fc.record({
      mode: fc.constant('percent' as const),
      base: fc.constantFrom('labour', 'parts', 'both', undefined),
      bp: fc.integer({ min: 0, max: 2_000 }),
      cap: fc.option(amount(0, 5_000)),
      floor: fc.option(amount(0, 1_000)),
    }),
  ),
  coreTax: fc.oneof(
    fc.constantFrom(
      { way: 'refunded' as const },
      { way: 'kept' as const },
      { way: 'kept-on-new' as const },
      { way: 'none' as const },
    ),
    fc.record({ way: fc.constant('share' as const), bp: fc.integer({ min: 0, max: 10_000 }) }),
  ),
  wasteFee: fc.option(
    fc.record({
      amount: amount(0, 5_000),
      words: fc.constant('Waste disposal'),
      when: fc.constantFrom('charged' as const, 'part-or-fluid' as const),
    }),
  ),
});
