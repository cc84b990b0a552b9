import type { Sheet, WasteFee } from './line.ts';
import { type Money, ZERO } from './money.ts';
import type { Steps } from './reckoning.ts';

/**
 * The fee for waste of a sheet, once, minor units; 0 where the rule asks for none. A job counts where it is charged: not
 * given, and bringing something to the sheet. A part or fluid that is given away makes no waste to pay for.
 */
export function wasteFeeOf(
  rule: WasteFee | null | undefined,
  sheet: Sheet,
  jobSums: ReadonlyMap<string, Money>,
  steps: Steps,
): Money {
  if (!rule) return ZERO;
  const charged = sheet.jobs.filter((job) => !job.given && (jobSums.get(job.id) ?? 0) > 0);
  const wanting = charged.filter(
    (job) =>
      rule.when === 'charged' ||
      job.lines.some(({ kind, given, quantity }) => (kind === 'part' || kind === 'fluid') && !given && quantity > 0),
  );
  if (wanting.length === 0 || rule.amount === 0) return ZERO;
  steps.add('waste-fee', { words: rule.words, jobs: wanting.length }, rule.amount);
  return rule.amount;
}
