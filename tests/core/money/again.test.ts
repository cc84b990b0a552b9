import { Decimal } from 'decimal.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type CreditedLine, creditedBase, reckonCredit } from '../../../core/money/credit.ts';
import type { LineKind, MoneyRules, Reduction, Sheet } from '../../../core/money/line.ts';
import { money, sum } from '../../../core/money/money.ts';
import { NOTHING_ADDED } from '../../../core/money/shop-rules.ts';
import { reckonSheet } from '../../../core/money/totals.ts';
import { anyRules, anySheet } from './sheets.ts';

const whole = (value: Decimal) => value.toDecimalPlaces(0, Decimal.ROUND_HALF_UP);
const add = (values: readonly Decimal[]) => values.reduce((all, one) => all.plus(one), new Decimal(0));

/** What a reduction takes off, as the trade has it: a share, or a sum that is never more than there is. */
function taken(by: Reduction, base: Decimal): Decimal {
  if ('bp' in by) return whole(base.times(by.bp).div(10_000));
  return Decimal.max(0, Decimal.min(by.sum, base));
}

/** Largest remainder, written a second time: floors first, then one each to the largest rests, ties to the earlier. */
function share(total: Decimal, weights: readonly Decimal[]): Decimal[] {
  const use = add(weights).greaterThan(0) ? weights : weights.map((weight) => Decimal.max(0, weight));
  const all = add(use);
  if (all.isZero()) return weights.map((_, place) => (place === 0 ? total : new Decimal(0)));
  const exact = use.map((weight) => total.abs().times(weight).div(all));
  const floors = exact.map((one) => one.floor());
  const left = total.abs().minus(add(floors)).toNumber();
  const byRest = exact
    .map((one, place) => ({ place, rest: one.minus(one.floor()) }))
    .sort((a, b) => b.rest.comparedTo(a.rest) || a.place - b.place)
    .slice(0, left)
    .map(({ place }) => place);
  const sign = total.isNegative() ? -1 : 1;
  return floors.map((one, place) => one.plus(byRest.includes(place) ? 1 : 0).times(sign));
}

interface Bears {
  readonly kind: LineKind;
  readonly value: Decimal;
  readonly fixed: boolean;
  readonly job: number;
}

/** The sheet added again with decimal.js from its lines alone, for sheets without fixed prices over worthless lines. */
function addAgain(sheet: Sheet, rules: MoneyRules) {
  const bears: Bears[] = sheet.jobs.flatMap((job, place) => {
    const amounts = job.lines.map((line) => {
      if (job.given || line.given) return new Decimal(0);
      const full = whole(new Decimal(line.quantity).times(line.unitPrice).div(1000));
      return line.discount === undefined ? full : full.minus(taken(line.discount, full));
    });
    const fixed = job.fixedPrice !== undefined && !job.given;
    const weights = amounts.map((one) => Decimal.max(0, one));
    const values = fixed ? share(new Decimal(job.fixedPrice ?? 0), weights) : amounts;
    return job.lines.map(({ kind }, at) => ({ kind, value: values[at] ?? new Decimal(0), fixed, job: place }));
  });
  const rule = rules.supplies;
  let supplies = new Decimal(0);
  if (rule.mode === 'percent') {
    const labour = add(bears.filter((one) => one.kind === 'labour' && !one.fixed).map((one) => one.value));
    if (labour.greaterThan(0)) {
      supplies = Decimal.max(whole(labour.times(rule.bp).div(10_000)), rule.floor ?? 0);
      if (rule.cap !== null) supplies = Decimal.min(supplies, rule.cap);
    }
  }
  if (!supplies.isZero()) bears.push({ kind: 'supplies', value: supplies, fixed: false, job: -1 });
  const wasteFee = wasteAgain(sheet, rules, bears);
  if (!wasteFee.isZero()) bears.push({ kind: 'fee', value: wasteFee, fixed: false, job: -1 });

  let left = bears.map((one) => one.value);
  for (const { on, reduction } of sheet.discounts) {
    const named = ({ kind }: Bears) =>
      on === 'all' || (on === 'labour' ? kind === 'labour' : kind === 'part' || kind === 'fluid');
    const bases = bears.map((one, at) => (named(one) ? (left[at] ?? new Decimal(0)) : new Decimal(0)));
    const base = add(bases);
    if (base.lessThanOrEqualTo(0)) continue;
    const off = share(taken(reduction, base), bases);
    left = left.map((one, at) => one.minus(off[at] ?? 0));
  }
  const prices = add(left);
  return { bears, left, supplies, wasteFee, prices, tax: sheet.exempt ? new Decimal(0) : taxOf(bears, left, rules) };
}

/** Once, where a job that is not given brings something, and (the shop's choice) where such a job holds a part or fluid. */
function wasteAgain(sheet: Sheet, rules: MoneyRules, bears: readonly Bears[]): Decimal {
  const rule = rules.wasteFee;
  if (rule === undefined || rule === null) return new Decimal(0);
  const holds = sheet.jobs.some((job, place) => {
    const brings = add(bears.filter((one) => one.job === place).map((one) => one.value));
    const goods = job.lines.filter((one) => ['part', 'fluid'].includes(one.kind) && one.quantity > 0 && !one.given);
    return !job.given && brings.greaterThan(0) && (rule.when === 'charged' || goods.length > 0);
  });
  return new Decimal(holds ? rule.amount : 0);
}

function taxOf(bears: readonly Bears[], left: readonly Decimal[], rules: MoneyRules): Decimal {
  const rates = (kind: LineKind) => (rules.taxes[kind] ?? []).map((tax) => new Decimal(tax.ratePpm).div(1_000_000));
  const held = (base: Decimal, kind: LineKind) => {
    const rate = add(rates(kind));
    return whole(base.times(rate).div(rate.plus(1)));
  };
  if (rules.taxRounding === 'line') {
    const ofLine = (base: Decimal, kind: LineKind) =>
      rules.prices === 'inclusive' ? held(base, kind) : add(rates(kind).map((rate) => whole(base.times(rate))));
    return add(bears.map(({ kind }, at) => ofLine(left[at] ?? new Decimal(0), kind)));
  }
  /** Bases under one name are one sum: a tax by its id and rate, or all the taxes of a kind together. */
  const bases = new Map<string, { base: Decimal; kind: LineKind; ppm: number }>();
  for (const [at, { kind }] of bears.entries()) {
    const taxes = rules.taxes[kind] ?? [];
    const names = taxes.map((tax) => `${tax.id} ${tax.ratePpm}`);
    const entries =
      rules.prices === 'inclusive'
        ? [{ name: names.toSorted().join('|'), ppm: 0 }]
        : taxes.map((tax, place) => ({ name: names[place] ?? '', ppm: tax.ratePpm }));
    for (const { name, ppm } of entries) {
      const base = (bases.get(name)?.base ?? new Decimal(0)).plus(left[at] ?? 0);
      bases.set(name, { base, kind, ppm });
    }
  }
  return add(
    [...bases.values()].map(({ base, kind, ppm }) =>
      rules.prices === 'inclusive' ? held(base, kind) : whole(base.times(ppm).div(1_000_000)),
    ),
  );
}

/** A fixed price whose lines are worth nothing falls on labour: told in totals.test.ts, not written twice here. */
const hasWorthlessFixed = (sheet: Sheet, rules: MoneyRules) =>
  sheet.jobs.some(
    (job) =>
      job.fixedPrice !== undefined &&
      !job.given &&
      !reckonSheet({ ...sheet, discounts: [], jobs: [{ ...job, fixedPrice: undefined }] }, rules).lines.some(
        ({ amount }) => amount > 0,
      ),
  );

describe('the sheet added again with decimal.js, from its lines alone', () => {
  test('comes to the same prices, supplies, shares and tax', () => {
    fc.assert(
      fc.property(anySheet, anyRules, (sheet, rules) => {
        fc.pre(!hasWorthlessFixed(sheet, rules));
        const totals = reckonSheet(sheet, rules);
        const again = addAgain(sheet, rules);
        const inclusive = rules.prices === 'inclusive';
        expect(totals.supplies).toBe(again.supplies.toNumber());
        expect(totals.wasteFee).toBe(again.wasteFee.toNumber());
        expect(totals.lines.map(({ base }) => base)).toEqual(
          again.left.slice(0, totals.lines.length).map((one) => one.toNumber() + 0),
        );
        expect(inclusive ? totals.gross : totals.net).toBe(again.prices.toNumber() + 0);
        expect(totals.tax).toBe(again.tax.toNumber() + 0);
      }),
      { numRuns: 500 },
    );
  });
});

describe('what must not change, and how', () => {
  test('a job that is given away costs what its absence costs', () => {
    fc.assert(
      fc.property(anySheet, anyRules, fc.nat(), (sheet, rules, pick) => {
        const place = pick % Math.max(1, sheet.jobs.length);
        const given = sheet.jobs.map((job, at) => (at === place ? { ...job, given: true } : job));
        const without = sheet.jobs.filter((_, at) => at !== place);
        const [a, b] = [given, without].map((jobs) => reckonSheet({ ...sheet, jobs }, rules));
        expect([a?.net, a?.tax, a?.gross, a?.supplies]).toEqual([b?.net, b?.tax, b?.gross, b?.supplies]);
      }),
    );
  });

  test('a line of nothing added at the end changes no figure', () => {
    fc.assert(
      fc.property(anySheet, anyRules, fc.constantFrom('labour', 'part', 'core'), (sheet, rules, kind) => {
        const nothing = { id: 'nothing', kind, quantity: 1000, unitPrice: money(0), given: false } as const;
        const more = { ...sheet, jobs: [...sheet.jobs, { id: 'more', lines: [nothing], given: false }] };
        const [a, b] = [reckonSheet(sheet, rules), reckonSheet(more, rules)];
        expect([b.net, b.tax, b.gross, b.supplies, b.discount]).toEqual([
          a.net,
          a.tax,
          a.gross,
          a.supplies,
          a.discount,
        ]);
      }),
    );
  });

  test('jobs in other places: the same prices; and without discounts the same tax, rounded once a document', () => {
    fc.assert(
      fc.property(anySheet, anyRules, (sheet, rules) => {
        const plain = { ...sheet, discounts: [] };
        const turned = { ...plain, jobs: plain.jobs.toReversed() };
        const [a, b] = [reckonSheet(plain, rules), reckonSheet(turned, rules)];
        expect([b.net, b.tax, b.gross, b.supplies]).toEqual([a.net, a.tax, a.gross, a.supplies]);
      }),
    );
  });

  test('an exempt customer pays the prices as typed, and no discount costs more than none', () => {
    fc.assert(
      fc.property(anySheet, anyRules, (sheet, rules) => {
        const exempt = reckonSheet({ ...sheet, exempt: true }, rules);
        expect(exempt.tax).toBe(0);
        expect(exempt.net).toBe(exempt.gross);
        const full = reckonSheet({ ...sheet, exempt: true, discounts: [] }, rules);
        expect(exempt.gross).toBe(full.gross - exempt.discount);
        expect(exempt.discount).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  test('tax by line is never further from tax by document than half a unit a line and tax', () => {
    fc.assert(
      fc.property(anySheet, anyRules, (sheet, rules) => {
        const [byLine, byDocument] = (['line', 'document'] as const).map((taxRounding) =>
          reckonSheet(sheet, { ...rules, taxRounding }),
        );
        const lines = (byLine?.lines.length ?? 0) + sheet.jobs.length + 1;
        const most = Math.max(0, ...Object.values(rules.taxes).map((taxes) => taxes?.length ?? 0));
        const apart = Math.abs((byLine?.tax ?? 0) - (byDocument?.tax ?? 0));
        expect(apart).toBeLessThanOrEqual(((lines + 7) * most) / 2);
      }),
    );
  });
});

describe('a paper credited bit by bit', () => {
  const line = fc.record({
    id: fc.uuid(),
    kind: fc.constantFrom<LineKind>('labour', 'part', 'fluid'),
    base: fc.integer({ min: -100_000, max: 500_000 }).map(money),
    quantity: fc.integer({ min: 1, max: 20_000 }),
  });

  test('comes to the whole line, whatever the bits', () => {
    fc.assert(
      fc.property(line, fc.array(fc.nat({ max: 20_000 }), { maxLength: 8 }), (one, cuts) => {
        const marks = [...new Set([0, ...cuts.map((cut) => cut % one.quantity), one.quantity])].toSorted(
          (a, b) => a - b,
        );
        const bits = marks.slice(1).map((mark, at) => {
          const creditedBefore = marks[at] ?? 0;
          return creditedBase({ ...one, creditedBefore, creditNow: mark - creditedBefore });
        });
        expect(sum(bits)).toBe(one.base);
      }),
    );
  });

  test('the whole paper at once: its tax is the tax of the paper', () => {
    fc.assert(
      fc.property(anySheet, anyRules, (sheet, rules) => {
        const plain = { ...rules, ...NOTHING_ADDED };
        // A fixed price without a labour line stands on no line: nothing of it could be credited by line.
        const jobs = sheet.jobs.map((job) => ({ ...job, fixedPrice: undefined }));
        const billed = reckonSheet({ ...sheet, jobs }, plain);
        const lines = billed.lines.map(
          ({ lineId, kind, base }): CreditedLine => ({
            ...{ id: lineId, kind, base, quantity: 1000 },
            ...{ creditedBefore: 0, creditNow: 1000 },
          }),
        );
        const credit = reckonCredit(lines, plain, sheet.exempt);
        expect([credit.net, credit.tax, credit.gross]).toEqual([billed.net, billed.tax, billed.gross]);
      }),
    );
  });
});
