import type {
  LineKind,
  LineTotal,
  MoneyRules,
  ReckoningStep,
  Reduction,
  Sheet,
  SheetDiscount,
  SheetTotals,
  Tax,
  TaxTotal,
} from './line.ts';
import { LINE_KINDS } from './line.ts';
import { type Money, money, roundDivide, scale, sum, ZERO } from './money.ts';
import { spread } from './spread.ts';

const PPM = 1_000_000;

interface Draft {
  readonly lineId: string;
  readonly jobId: string;
  readonly kind: LineKind;
  readonly amount: Money;
  /** What the line stands for in the sum: its amount, or its share of a fixed price. */
  readonly value: Money;
}

function reduce(base: Money, reduction: Reduction): Money {
  return 'bp' in reduction ? scale(base, reduction.bp, 10_000) : money(Math.min(reduction.sum, base));
}

/**
 * Every figure of a sheet, in minor units: round(quantity x unit price) a line, half away from zero; line discounts;
 * fixed prices spread over their lines by value; supplies as a share of charged labour; sheet discounts spread by value
 * before tax (largest remainder, ties to the earlier line); tax by document or by line, in exclusive prices
 * round(base x rate), in inclusive ones round(gross x R / (1 + R)) with net = gross - tax.
 * The result hangs on the lines and their places alone, never on the order of typing.
 */
export function reckonSheet(sheet: Sheet, rules: MoneyRules): SheetTotals {
  const reckoning: ReckoningStep[] = [];
  const step = (rule: string, on: ReckoningStep['on'], result: number) => reckoning.push({ rule, on, result });

  const drafts = draftLines(sheet, step);
  const labour = sum(drafts.filter((line) => line.kind === 'labour').map((line) => line.value));
  const supplies = suppliesOf(labour, rules, step);

  const rows = [...drafts];
  if (supplies !== 0) rows.push({ lineId: '', jobId: '', kind: 'supplies', amount: supplies, value: supplies });
  const shares = spreadDiscounts(rows, sheet.discounts, step);
  const bases = rows.map((row, place) => money(row.value - (shares[place] ?? 0)));

  const taxed = taxesOf(rows, bases, sheet.exempt, rules, step);
  const total = sum(bases);
  const tax = sum(taxed.totals.map((one) => one.amount));
  const [net, gross] = rules.prices === 'inclusive' ? [money(total - tax), total] : [total, money(total + tax)];
  step('net', { lines: rows.length }, net);
  step('tax', { rates: taxed.totals.length }, tax);
  step('gross', { net, tax }, gross);

  const jobs = new Map<string, Money>(
    sheet.jobs.map((job) => [job.id, sum(drafts.filter((d) => d.jobId === job.id).map((d) => d.value))]),
  );
  const byKind = Object.fromEntries(
    LINE_KINDS.map((kind) => [kind, sum(drafts.filter((d) => d.kind === kind).map((d) => d.value))]),
  );
  const hours = sheet.jobs
    .filter((job) => !job.given)
    .flatMap((job) => job.lines)
    .filter((line) => line.kind === 'labour' && !line.given);

  return {
    lines: drafts.map(
      (row, place): LineTotal => ({
        lineId: row.lineId,
        jobId: row.jobId,
        kind: row.kind,
        amount: row.amount,
        discountShare: shares[place] ?? ZERO,
        base: bases[place] ?? ZERO,
        tax: taxed.byLine[place] ?? ZERO,
      }),
    ),
    jobs,
    byKind: byKind as Record<LineKind, Money>,
    labourHours: hours.reduce((a, line) => a + line.quantity, 0),
    supplies,
    discount: sum(shares),
    taxes: taxed.totals,
    net,
    tax,
    gross,
    reckoning,
  };
}

type Step = (rule: string, on: ReckoningStep['on'], result: number) => void;

function draftLines(sheet: Sheet, step: Step): Draft[] {
  return sheet.jobs.flatMap((job) => {
    const own = job.lines.map((line) => {
      const full = scale(line.quantity, line.unitPrice, 1000);
      const less = line.discount ? money(full - reduce(full, line.discount)) : full;
      const amount = line.given || job.given ? ZERO : less;
      step(
        line.given || job.given ? 'line-given' : 'line',
        { line: line.id, quantity: line.quantity, unitPrice: line.unitPrice },
        amount,
      );
      return { line, amount };
    });
    if (job.fixedPrice === undefined) {
      return own.map(({ line, amount }) => ({
        lineId: line.id,
        jobId: job.id,
        kind: line.kind,
        amount,
        value: amount,
      }));
    }
    const price = job.given ? ZERO : job.fixedPrice;
    step('fixed-price', { job: job.id, lines: own.length }, price);
    const worth = own.map(({ amount }) => amount);
    // A fixed price over lines without a value is labour: what is sold is the work.
    if (worth.every((amount) => amount === 0)) {
      const rest = own.map(({ line }) => ({
        lineId: line.id,
        jobId: job.id,
        kind: line.kind,
        amount: ZERO,
        value: ZERO,
      }));
      return [...rest, { lineId: '', jobId: job.id, kind: 'labour' as const, amount: ZERO, value: price }];
    }
    const parts = spread(price, worth);
    return own.map(({ line }, place) => ({
      lineId: line.id,
      jobId: job.id,
      kind: line.kind,
      amount: ZERO,
      value: parts[place] ?? ZERO,
    }));
  });
}

function suppliesOf(labour: Money, rules: MoneyRules, step: Step): Money {
  const rule = rules.supplies;
  if (rule.mode === 'itemise' || labour <= 0) return ZERO;
  const share = scale(labour, rule.bp, 10_000);
  const raised = rule.floor !== null ? Math.max(share, rule.floor) : share;
  const result = money(rule.cap !== null ? Math.min(raised, rule.cap) : raised);
  step('supplies', { labour, bp: rule.bp, cap: rule.cap ?? 'none' }, result);
  return result;
}

function reaches(discount: SheetDiscount, kind: LineKind): boolean {
  if (discount.on === 'labour') return kind === 'labour';
  if (discount.on === 'parts') return kind === 'part' || kind === 'fluid';
  return true;
}

function spreadDiscounts(rows: readonly Draft[], discounts: readonly SheetDiscount[], step: Step): Money[] {
  const shares = rows.map(() => 0);
  for (const discount of discounts) {
    // What is left of each line after the discounts before this one; a line below zero takes no share.
    const weights = rows.map((row, place) =>
      reaches(discount, row.kind) ? Math.max(0, row.value - (shares[place] ?? 0)) : 0,
    );
    const base = sum(weights);
    const total = reduce(base, discount.reduction);
    step('discount', { on: discount.on, base }, total);
    if (base === 0) continue;
    spread(total, weights).forEach((share, place) => {
      shares[place] = (shares[place] ?? 0) + share;
    });
  }
  return shares.map(money);
}

function taxesOf(
  rows: readonly Draft[],
  bases: readonly Money[],
  exempt: boolean,
  rules: MoneyRules,
  step: Step,
): { totals: TaxTotal[]; byLine: Money[] } {
  const byLine = rows.map(() => 0);
  // Lines that bear the same set of taxes are taxed together: in inclusive prices the split needs the whole set.
  const sets = new Map<string, { taxes: readonly Tax[]; places: number[] }>();
  rows.forEach((row, place) => {
    const taxes = exempt ? [] : (rules.taxes[row.kind] ?? []);
    if (taxes.length === 0) return;
    const key = taxes.map((tax) => tax.id).join(' ');
    const set = sets.get(key) ?? { taxes, places: [] };
    set.places.push(place);
    sets.set(key, set);
  });
  if (rules.taxRounding === 'line') {
    for (const { taxes, places } of sets.values()) {
      for (const place of places) byLine[place] = sum(taxAmounts(bases[place] ?? ZERO, taxes, rules.prices));
    }
  }
  const all = new Map<string, { tax: Tax; base: number; amount: number }>();
  for (const { taxes, places } of sets.values()) {
    const groups = rules.taxRounding === 'line' ? places.map((place) => [place]) : [places];
    for (const group of groups) {
      const base = sum(group.map((place) => bases[place] ?? ZERO));
      const amounts = taxAmounts(base, taxes, rules.prices);
      taxes.forEach((tax, n) => {
        const total = all.get(tax.id) ?? { tax, base: 0, amount: 0 };
        total.base += base;
        total.amount += amounts[n] ?? 0;
        all.set(tax.id, total);
      });
    }
  }
  const totals = [...all.values()].map(({ tax, base, amount }): TaxTotal => {
    // A rate that several sets share is rounded once a document in exclusive prices.
    const exact =
      rules.taxRounding === 'document' && rules.prices === 'exclusive' ? scale(base, tax.ratePpm, PPM) : money(amount);
    step(rules.prices === 'inclusive' ? 'tax-inside' : 'tax-on', { tax: tax.name, ratePpm: tax.ratePpm, base }, exact);
    return { tax, base: money(base), amount: exact };
  });
  return { totals, byLine: byLine.map(money) };
}

/** Taxes of one base. Inclusive: the whole is rounded once, then split over the taxes by rate. */
function taxAmounts(base: Money, taxes: readonly Tax[], prices: MoneyRules['prices']): Money[] {
  if (prices === 'exclusive') return taxes.map((tax) => scale(base, tax.ratePpm, PPM));
  const rates = taxes.reduce((a, tax) => a + tax.ratePpm, 0);
  const whole = roundDivide(BigInt(base) * BigInt(rates), BigInt(PPM + rates));
  return spread(
    whole,
    taxes.map((tax) => tax.ratePpm),
  );
}
