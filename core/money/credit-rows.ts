import { coreTaxStays, withoutTax } from './core-tax.ts';
import type { CreditedLine } from './credit.ts';
import type { MoneyRules, Sheet, SheetLine } from './line.ts';
import { type Money, ZERO } from './money.ts';
import { reckonSheet } from './totals.ts';

/** What a paper bills, as a credit note can take it back. */
export type CreditRow = Omit<CreditedLine, 'creditedBefore' | 'creditNow'>;

/** What stands on no line is credited under a name of its own, by thousandths of it. */
const WHOLE = 1000;

/** A billed line as it can be credited: with its tax, or without one that stays where it was paid. */
export function creditable(
  { id, kind, quantity, exchange, given }: SheetLine,
  base: Money,
  sheet: Sheet,
  rules: MoneyRules,
): CreditRow {
  const job = sheet.jobs.find((one) => one.lines.some((line) => line.id === id));
  const taxStays = kind === 'core' && job !== undefined && coreTaxStays(job, rules);
  const net = taxStays && rules.prices === 'inclusive' ? withoutTax(kind, base, sheet, rules) : base;
  const free = given || job?.given;
  return { id, kind, quantity, base: net, job: job?.id, exchange, given: free, taxStays, billed: base };
}

/**
 * Everything that an issued sheet bills, in its order: its lines, a fixed price that no line carries, and what rules
 * added (supplies, the fee for waste). Bases in minor units; together they are all that the paper comes to.
 */
export function creditRows(sheet: Sheet, rules: MoneyRules): CreditRow[] {
  const totals = reckonSheet(sheet, rules);
  const bases = new Map(totals.lines.map((line) => [line.lineId, line.base]));
  const unlined = (jobId: string | null) =>
    totals.unlined
      .filter((one) => one.jobId === jobId)
      .map(({ what, kind, base }): CreditRow => {
        const id = jobId === null ? what : `${what}:${jobId}`;
        return { id, kind, quantity: WHOLE, base, job: jobId ?? undefined, unlined: what };
      });
  const ofJobs = sheet.jobs.flatMap((job) => [
    ...job.lines.flatMap((line): CreditRow[] => {
      const row = creditable(line, bases.get(line.id) ?? ZERO, sheet, rules);
      if (row.quantity !== 0) return [row];
      // A line without a quantity bills nothing, but for labour that carries a fixed price.
      return row.base === 0 ? [] : [{ ...row, quantity: WHOLE, unlined: 'fixed-price' }];
    }),
    ...unlined(job.id),
  ]);
  return [...ofJobs, ...unlined(null)];
}
