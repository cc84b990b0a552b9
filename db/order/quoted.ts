import { reckonSheet } from '../../core/money/totals.ts';
import type { Context } from '../context.ts';
import type { KeptSheet } from './issue.ts';
import type { Loaded } from './load.ts';

interface QuotedJob {
  /** What the job came to, before sheet discounts, in the sheet's prices. */
  readonly amount: number;
  readonly lines: ReadonlyMap<string, { readonly quantity: number; readonly amount: number }>;
}

export interface Quoted {
  /** The newest quote that a yes was said to, else the newest of all. */
  readonly paper: Loaded['papers'][number] | null;
  /** A job as it stood in the quote that its last yes was said to, else in the newest that holds it; null in none. */
  readonly ofJob: (jobId: string) => QuotedJob | null;
}

/** What was quoted, re-added from what each quote was reckoned from. */
export async function quotedOf(context: Context, loaded: Loaded): Promise<Quoted> {
  const sheets = await context.tx
    .selectFrom('paper')
    .select(['id', 'sheet'])
    .where('work_order_id', '=', loaded.order.id)
    .where('kind', '=', 'quote')
    .execute();
  const sheetOf = new Map(sheets.map((row) => [row.id, row.sheet]));
  const quotes = loaded.papers.flatMap((paper) => {
    const sheet = sheetOf.get(paper.id);
    return sheet === undefined ? [] : [{ paper, jobs: jobsIn(sheet) }];
  });
  const answered = loaded.decisions.filter((row) => row.ceiling !== null && row.quote_paper_id !== null);
  const lastYes = (jobId: string) => {
    const named = loaded.decided.findLast((row) => row.job_id === jobId && row.answer === 'yes');
    return loaded.decisions.find((row) => row.id === named?.decision_id)?.quote_paper_id ?? null;
  };
  return {
    paper:
      (quotes.findLast(({ paper }) => answered.some((row) => row.quote_paper_id === paper.id)) ?? quotes.at(-1))
        ?.paper ?? null,
    ofJob: (jobId) => {
      const said = lastYes(jobId);
      const holds = quotes.filter(({ jobs }) => jobs.has(jobId));
      return (holds.find(({ paper }) => paper.id === said) ?? holds.at(-1))?.jobs.get(jobId) ?? null;
    },
  };
}

function jobsIn(kept: string): ReadonlyMap<string, QuotedJob> {
  const { sheet, rules } = JSON.parse(kept) as KeptSheet;
  const totals = reckonSheet(sheet, rules);
  const amounts = new Map(totals.lines.map((line) => [line.lineId, line.amount]));
  return new Map(
    sheet.jobs.map((job) => [
      job.id,
      {
        amount: totals.jobs.get(job.id) ?? 0,
        lines: new Map(
          job.lines.map((line) => [line.id, { quantity: line.quantity, amount: amounts.get(line.id) ?? 0 }]),
        ),
      },
    ]),
  );
}
