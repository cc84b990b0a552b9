import { hoursX1000 } from '../../core/bench/clock.ts';
import type { OutputOf } from '../../core/contract/index.ts';
import { reckonSheet } from '../../core/money/totals.ts';
import type { Context } from '../context.ts';
import type { KeptSheet } from './issue.ts';
import { countedMinutes } from './reckon.ts';

type LastTimes = OutputOf<'jobBook.get'>['lastTimes'];

/** What a job of the book took on invoiced orders: hours clocked, quantities billed, prices, what else was found; with count and spread. */
export async function lastTimes(context: Context, bookJobId: string, booked: number): Promise<LastTimes> {
  const { tx } = context;
  const jobs = await tx
    .selectFrom('job')
    .innerJoin('book_job_version', 'book_job_version.id', 'job.book_job_version_id')
    .innerJoin('paper', 'paper.work_order_id', 'job.work_order_id')
    .select(['job.id', 'job.work_order_id', 'paper.sheet'])
    .where('book_job_version.book_job_id', '=', bookJobId)
    .where('paper.kind', '=', 'invoice')
    .where('job.taken_out', '=', 0)
    .orderBy('paper.issued_at', 'desc')
    .limit(20)
    .execute();
  if (jobs.length === 0) return { count: 0, hours: null, lines: [], prices: null, found: [] };
  const ids = jobs.map((job) => job.id);
  const entries = await tx.selectFrom('clock_entry').selectAll().where('job_id', 'in', ids).execute();
  const lines = await tx.selectFrom('line').selectAll().where('job_id', 'in', ids).where('taken_out', '=', 0).execute();
  const findings = await tx
    .selectFrom('finding')
    .select('text')
    .where(
      'work_order_id',
      'in',
      jobs.map((job) => job.work_order_id),
    )
    .where('job_id', 'is not', null)
    .execute();
  const hours = ids.map((id) => hoursX1000(countedMinutes(entries, id))).filter((each) => each > 0);
  const byWords = Map.groupBy(
    lines.filter((line) => line.kind === 'part' || line.kind === 'fluid'),
    (line) => line.words,
  );
  const found = Map.groupBy(findings, (row) => row.text);
  return {
    count: jobs.length,
    hours:
      hours.length === 0
        ? null
        : {
            ...spreadOf(hours),
            booked,
          },
    lines: [...byWords].map(([words, rows]) => ({
      words,
      unit: rows[0]?.unit ?? '',
      least: Math.min(...rows.map((row) => row.quantity)),
      most: Math.max(...rows.map((row) => row.quantity)),
      count: rows.length,
    })),
    prices: context.seesPrices ? pricesOf(jobs) : null,
    found: [...found].map(([text, rows]) => ({ text, count: rows.length })),
  };
}

/** The least, the middle (of two, the lesser) and the most of some figures, of which there is at least one. */
function spreadOf(figures: readonly number[]) {
  const sorted = figures.toSorted((a, b) => a - b);
  return {
    least: sorted[0] ?? 0,
    middle: sorted[Math.floor((sorted.length - 1) / 2)] ?? 0,
    most: sorted.at(-1) ?? 0,
  };
}

/** What the job came to on each invoice, added again from what that was reckoned from. A job given away is no price. */
function pricesOf(jobs: readonly { readonly id: string; readonly sheet: string }[]): LastTimes['prices'] {
  const prices = jobs.flatMap((job) => {
    const { sheet, rules } = JSON.parse(job.sheet) as KeptSheet;
    const amount = reckonSheet(sheet, rules).jobs.get(job.id) ?? 0;
    return amount === 0 ? [] : [amount];
  });
  return prices.length === 0 ? null : { ...spreadOf(prices), count: prices.length };
}
