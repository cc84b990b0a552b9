import { entryMinutes } from '../../core/bench/clock.ts';
import { isExchange } from '../../core/money/core-tax.ts';
import type { Reduction, Sheet, SheetJob } from '../../core/money/line.ts';
import { money } from '../../core/money/money.ts';
import { rulesOf } from '../../core/money/shop-rules.ts';
import { reckonSheet } from '../../core/money/totals.ts';
import type { AllowanceRule } from '../../core/order/allowance.ts';
import { type BillingStep, billedHours, clockedHours } from '../../core/order/labour.ts';
import { yesAgainstSheet } from '../../core/order/yes.ts';
import type { Settings } from '../context.ts';
import type { JobRow, LineRow } from '../tables.ts';
import type { Loaded } from './load.ts';

/** The letters of the jobs as garages put them on paper: A to Z, then AA. */
export const letterOf = (place: number): string =>
  place < 26 ? String.fromCharCode(65 + place) : `${letterOf(Math.floor(place / 26) - 1)}${letterOf(place % 26)}`;

/** Minutes of finished work on a job that count: corrections take the place of what they correct, forgotten ones count nothing. */
export function countedMinutes(entries: Loaded['entries'], jobId: string, personId?: string): number {
  const corrected = new Set(entries.flatMap((entry) => (entry.corrects === null ? [] : [entry.corrects])));
  return entries
    .filter((entry) => entry.job_id === jobId && entry.kind === 'work' && !corrected.has(entry.id))
    .filter((entry) => personId === undefined || entry.person_id === personId)
    .reduce((minutes, entry) => minutes + entryMinutes({ on: entry.on_at, off: entry.off_at }), 0);
}

/**
 * Minutes that a line of labour charges as clocked: those of its job, once. Where the job has several such lines the
 * first of them has all of its minutes, the others none: which work a minute went to was not clocked.
 */
function minutesOf(line: LineRow, lines: readonly LineRow[], entries: Loaded['entries']): number {
  const first = lines.find((one) => one.job_id === line.job_id && isClocked(one));
  return first?.id === line.id ? countedMinutes(entries, line.job_id) : 0;
}

const isClocked = (line: LineRow): boolean => line.kind === 'labour' && line.billing === 'clocked';

/** Hours or pieces that a line charges, thousandths: as typed; book less overlap while the named job is done too; or clocked, to the shop's step. */
function chargedQuantity(
  line: LineRow,
  lines: readonly LineRow[],
  onSheet: ReadonlySet<string>,
  entries: Loaded['entries'],
  billing: BillingStep,
): number {
  if (line.kind !== 'labour' || line.billing === 'typed') return line.quantity;
  if (line.billing === 'clocked') return clockedHours(minutesOf(line, lines, entries), billing);
  const { job_id: jobId, book: bookHours, overlap: overlapHours, overlap_job_id: primaryJobId } = line;
  return billedHours({ jobId, bookHours, overlapHours, primaryJobId }, onSheet);
}

function sheetJob(
  job: JobRow,
  lines: readonly LineRow[],
  onSheet: ReadonlySet<string>,
  entries: Loaded['entries'],
  billing: BillingStep,
): SheetJob {
  return {
    id: job.id,
    given: job.given === 1 || job.kind !== 'charged',
    fixedPrice: job.fixed_price === null ? undefined : money(job.fixed_price),
    lines: lines
      .filter((line) => line.job_id === job.id)
      .map((line) => ({
        id: line.id,
        kind: line.kind,
        quantity: chargedQuantity(line, lines, onSheet, entries, billing),
        clocked: isClocked(line) ? { minutes: minutesOf(line, lines, entries), ...billing } : undefined,
        unitPrice: money(line.unit_price),
        given: line.given === 1,
        exchange: isExchange(line),
        discount: line.discount === null ? undefined : (JSON.parse(line.discount) as Reduction),
      })),
  };
}

/**
 * Jobs whose last answer is a yes of somebody who cannot give it as the job now stands: free work (warranty, goodwill,
 * internal) is the owner's to say yes to, charged work is not. So a job that changes its kind waits for a yes anew.
 */
function yesOfAnother(loaded: Loaded): ReadonlySet<string> {
  const spoken = new Map(loaded.decisions.map((row) => [row.id, row.spoken_role]));
  const unfit = loaded.jobs.filter((job) => {
    const last = loaded.decided.findLast((row) => row.job_id === job.id);
    if (last?.answer !== 'yes') return false;
    const owner = spoken.get(last.decision_id) === 'owner';
    return job.kind === 'charged' ? owner && job.given === 0 : !owner;
  });
  return new Set(unfit.map((job) => job.id));
}

/**
 * The sheet of an order, its totals, and the yes against it. Declined and offered jobs stand outside the sum. Once its
 * invoice is out, the sheet is the one that the invoice was reckoned from, by the rules of that day: no setting that is
 * changed afterwards moves it.
 */
export function reckonOrder(loaded: Loaded, settings: Settings) {
  const answers = new Map(loaded.decided.map((row) => [row.job_id, row.answer]));
  const { invoiced } = loaded;
  const billed = invoiced === null ? null : new Set(invoiced.sheet.jobs.map((job) => job.id));
  const out = (job: JobRow) =>
    billed === null
      ? answers.get(job.id) === 'no' ||
        answers.get(job.id) === 'later' ||
        (job.offered === 1 && answers.get(job.id) !== 'yes')
      : !billed.has(job.id);
  const inSum = loaded.jobs.filter((job) => !out(job));
  const onSheet = new Set(inSum.map((job) => job.id));
  const sheetOf = (jobs: readonly JobRow[]): Sheet => ({
    jobs: jobs.map((job) => sheetJob(job, loaded.lines, onSheet, loaded.entries, settings.billing)),
    discounts: loaded.discounts.map((row) => ({
      on: row.on_what,
      reduction: JSON.parse(row.reduction) as Reduction,
      words: row.words,
    })),
    exempt: (loaded.payer ?? loaded.customer).tax_exempt !== '',
  });
  const rules = invoiced?.rules ?? rulesOf(settings, loaded.order.counter_sale === 1);
  const sheet = invoiced?.sheet ?? sheetOf(inSum);
  const totals = reckonSheet(sheet, rules);
  const unfit = yesOfAnother(loaded);
  const decisions = loaded.decisions.map((decision) => ({
    ceiling: decision.ceiling === null ? null : money(decision.ceiling),
    jobs: loaded.decided
      .filter((row) => row.decision_id === decision.id && !unfit.has(row.job_id))
      .map((row) => ({ jobId: row.job_id, answer: row.answer })),
  }));
  const { overrun } = settings;
  const rule: AllowanceRule = {
    ...overrun,
    fixed: money(overrun.fixed),
    cap: overrun.cap === null ? null : money(overrun.cap),
  };
  const yes = yesAgainstSheet(sheet, rules, decisions, rule);
  const maximum = loaded.order.own_maximum;
  /** By how much the sheet is over the most that the customer wants to spend; 0 when inside or when none was named. */
  const overMaximum = maximum === null ? 0 : Math.max(0, totals.gross - maximum);
  /** Jobs outside the sum, each reckoned as a sheet of its own without discounts. */
  const asideJobs = loaded.jobs.filter(out);
  const asideTotals = asideJobs.map((job) => reckonSheet({ ...sheetOf([job]), discounts: [] }, rules));
  const aside = new Map(asideTotals.flatMap(({ jobs }) => [...jobs]));
  /** Lines of the sheet and of the jobs outside its sum, by id. */
  const lineTotals = new Map([totals, ...asideTotals].flatMap(({ lines }) => lines).map((line) => [line.lineId, line]));
  const billedLines = new Map(sheet.jobs.flatMap((job) => job.lines.map((line) => [line.id, line.quantity] as const)));
  /** Hours or pieces that a line charges, thousandths. */
  const charged = (line: LineRow) =>
    billedLines.get(line.id) ?? chargedQuantity(line, loaded.lines, onSheet, loaded.entries, settings.billing);
  return {
    sheet,
    rules,
    totals,
    charged,
    decisions,
    rule,
    yes,
    overMaximum,
    inSum,
    asideJobs,
    aside,
    lineTotals,
    answers,
    onSheet,
  };
}

export type Reckoned = ReturnType<typeof reckonOrder>;

/** What is open on an order's papers: invoices less credits less payments; before an invoice, deposits stand below zero. */
export function balanceOf(loaded: Loaded): number {
  const owed = loaded.papers.reduce(
    (sum, paper) => sum + (paper.kind === 'invoice' ? paper.gross : paper.kind === 'credit-note' ? -paper.gross : 0),
    0,
  );
  return owed - loaded.payments.reduce((sum, payment) => sum + payment.amount, 0);
}
