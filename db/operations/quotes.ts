import { reckonSheet } from '../../core/money/totals.ts';
import type { Handlers } from '../context.ts';
import type { KeptSheet } from '../order/issue.ts';

export const quoteHandlers: Handlers = {
  'quote.list': async ({ orderId }, context) => {
    if (!context.seesPrices) return { quotes: [] };
    const papers = await context.tx
      .selectFrom('paper')
      .select(['id', 'number', 'version', 'issued_at', 'sheet', 'tax', 'gross'])
      .where('work_order_id', '=', orderId)
      .where('kind', '=', 'quote')
      .orderBy('version')
      .execute();
    const lines = await context.tx
      .selectFrom('line')
      .innerJoin('job', 'job.id', 'line.job_id')
      .select(['line.id', 'line.words', 'line.unit'])
      .where('job.work_order_id', '=', orderId)
      .execute();
    const lineOf = new Map(lines.map((line) => [line.id, line]));
    return {
      quotes: papers.map((paper) => {
        // The figures are reckoned again from what the paper was reckoned from: they are those that are printed.
        const kept = JSON.parse(paper.sheet) as KeptSheet;
        const totals = reckonSheet(kept.sheet, kept.rules);
        const amounts = new Map(totals.lines.map((line) => [line.lineId, line.amount]));
        return {
          paperId: paper.id,
          number: paper.number,
          version: paper.version ?? 1,
          issuedAt: paper.issued_at,
          jobs: kept.sheet.jobs.map((job) => ({
            jobId: job.id,
            amount: totals.jobs.get(job.id) ?? 0,
            lines: job.lines.map((line) => ({
              lineId: line.id,
              words: lineOf.get(line.id)?.words ?? '',
              unit: lineOf.get(line.id)?.unit ?? '',
              quantity: line.quantity,
              amount: amounts.get(line.id) ?? 0,
            })),
          })),
          supplies: totals.supplies,
          wasteFee: totals.wasteFee,
          discount: totals.discount,
          tax: paper.tax,
          gross: paper.gross,
        };
      }),
    };
  },
};
