import type { LineKind, Reduction, Sheet, SheetJob, SheetLine } from './line.ts';
import { type Money, money, roundDivide, scale, sum, ZERO } from './money.ts';
import type { Steps } from './reckoning.ts';
import { spread } from './spread.ts';

/**
 * What bears discounts and taxes: a line of the sheet, what a rule adds (supplies, the fee for waste), or a fixed price whose job has
 * no line to carry it (then `lineId` is null).
 */
export interface Bearer {
  readonly lineId: string | null;
  readonly jobId: string | null;
  readonly kind: LineKind;
  /** quantity x unit price less its own discount; 0 when given or inside a fixed price. */
  readonly amount: Money;
  /** What it brings to the sheet before sheet discounts: the amount, or its share of a fixed price. */
  readonly value: Money;
  /** Hours charged, in thousandths; 0 for what is no labour. */
  readonly hours: number;
  /** Inside a fixed price: its labour is sold already and bears no supplies. */
  readonly inFixedPrice: boolean;
  /** As on the line: an old unit goes back for it; it bears no tax. */
  readonly exchange: boolean;
  readonly untaxed: boolean;
}

/** All bearers of a sheet in the order of its places, without what rules add. */
export function bearersOf(sheet: Sheet, steps: Steps): Bearer[] {
  return sheet.jobs.flatMap((job) => jobBearers(job, steps));
}

function jobBearers(job: SheetJob, steps: Steps): Bearer[] {
  const free = (line: SheetLine) => job.given || line.given;
  const worth = job.lines.map((line) => (free(line) ? givenAmount(line, job, steps) : lineAmount(line, steps)));
  const fixed = job.given ? undefined : job.fixedPrice;
  const bearer = (line: SheetLine, amount: Money, value: Money): Bearer => ({
    lineId: line.id,
    jobId: job.id,
    kind: line.kind,
    amount,
    value,
    hours: line.kind === 'labour' && !free(line) ? line.quantity : 0,
    inFixedPrice: fixed !== undefined,
    exchange: line.exchange === true,
    untaxed: line.untaxed === true,
  });
  if (fixed === undefined) {
    steps.add(job.given ? 'job-given' : 'job-sum', { job: job.id, lines: job.lines.length }, sum(worth));
    return job.lines.map((line, at) => bearer(line, worth[at] ?? ZERO, worth[at] ?? ZERO));
  }
  steps.add('job-fixed-price', { job: job.id, lines: sum(worth) }, fixed);
  const weights = fixedWeights(job, worth);
  if (weights === null) {
    const carrier: Bearer = {
      lineId: null,
      jobId: job.id,
      kind: 'labour',
      amount: ZERO,
      value: fixed,
      hours: 0,
      inFixedPrice: true,
      exchange: false,
      untaxed: false,
    };
    return [...job.lines.map((line) => bearer(line, ZERO, ZERO)), carrier];
  }
  const shares = spread(fixed, weights);
  return job.lines.map((line, at) => {
    const share = shares[at] ?? ZERO;
    steps.add('fixed-price-share', { job: job.id, line: line.id, worth: weights[at] ?? 0, of: fixed }, share);
    return bearer(line, ZERO, share);
  });
}

/** A fixed price is spread by what its lines are worth; lines of no worth leave it all on labour. Null: no labour line. */
function fixedWeights(job: SheetJob, worth: readonly Money[]): number[] | null {
  const positive = worth.map((amount) => Math.max(0, amount));
  if (positive.some((amount) => amount > 0)) return positive;
  const first = job.lines.findIndex((line) => line.kind === 'labour' && !line.given);
  return first < 0 ? null : job.lines.map((_, at) => (at === first ? 1 : 0));
}

function givenAmount(line: SheetLine, job: SheetJob, steps: Steps): Money {
  steps.add('line-given', { line: line.id, job: job.id }, ZERO);
  return ZERO;
}

/** round(quantity x unit price / 1000) less the line's own discount. */
function lineAmount(line: SheetLine, steps: Steps): Money {
  const full = roundDivide(BigInt(line.quantity) * BigInt(line.unitPrice), 1000n);
  const on = { line: line.id, quantity: line.quantity, unitPrice: line.unitPrice };
  if (line.clocked === undefined) steps.add('line-amount', on, full);
  else {
    const { minutes, step, way } = line.clocked;
    steps.add(`line-clocked-${way}`, { ...on, minutes, step }, full);
  }
  if (line.discount === undefined) return full;
  const off = reduction(line.discount, full);
  steps.add('line-discount', { line: line.id, of: full, ...line.discount }, off);
  return money(full - off);
}

/** What a percentage or a sum takes off `base`: never more than there is, and nothing off a credit but a percentage. */
export function reduction(by: Reduction, base: Money): Money {
  if ('bp' in by) return scale(base, by.bp, 10_000);
  return money(Math.max(0, Math.min(by.sum, base)));
}
