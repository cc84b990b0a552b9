import type { Handlers } from '../context.ts';
import { billedOf, creditedJobs, creditNow } from '../order/credit.ts';
import { creditPaper, paperSums } from '../order/document.ts';
import { issue } from '../order/issue.ts';
import { loadOrder } from '../order/load.ts';
import { letterOf } from '../order/reckon.ts';
import { settingsOf } from '../people.ts';
import { post, salePostings } from '../postings.ts';
import { badInput, notFound } from '../refusal.ts';
import { nextNumber } from '../series.ts';

export const creditNoteHandlers: Handlers = {
  'creditNote.left': async ({ invoicePaperId }, context) => {
    const { invoice, kept, rows } = await billedOf(context, invoicePaperId);
    const loaded = await loadOrder(context, invoice.work_order_id);
    return {
      rows: rows.map(({ id, quantity, base, creditedBefore, job: jobId, unlined }) => {
        const job = loaded.jobs.find((one) => one.id === jobId);
        const line = loaded.lines.find((one) => one.id === id);
        const added = unlined === 'waste-fee' ? (kept.rules.wasteFee?.words ?? '') : (job?.title ?? '');
        return {
          lineId: id,
          what: unlined ?? ('line' as const),
          letter: job === undefined ? '' : letterOf(job.place),
          words: line?.words ?? added,
          unit: line?.unit ?? '',
          quantity,
          left: quantity - creditedBefore,
          amount: base,
        };
      }),
    };
  },
  'creditNote.issue': async ({ invoicePaperId, reason, lines }, context) => {
    const billed = await billedOf(context, invoicePaperId);
    const { invoice, kept } = billed;
    const settings = settingsOf(context);
    const loaded = await loadOrder(context, invoice.work_order_id);
    for (const [place, { lineId, quantity }] of lines.entries()) {
      if (lines.findIndex((one) => one.lineId === lineId) < place)
        throw badInput(`lines.${place}.lineId`, 'same-row-twice');
      const row = billed.rows.find(({ id }) => id === lineId);
      if (row === undefined) throw notFound('line', lineId);
      const left = row.quantity - row.creditedBefore;
      if (quantity === 0 || quantity > left) throw badInput(`lines.${place}.quantity`, 'more-than-billed', { left });
    }
    const now = new Map(lines.map(({ lineId, quantity }) => [lineId, quantity]));
    const { credited, totals, from } = creditNow(billed, now);
    const number = await nextNumber(context, 'credit-note');
    // As on the invoice: whoever pays may bear no tax, the customer may.
    const exempt = kept.sheet.exempt ? (loaded.payer ?? loaded.customer).tax_exempt : '';
    const wasteWords = kept.rules.wasteFee?.words ?? '';
    const document = creditPaper(context, settings, loaded, {
      number,
      corrects: { number: invoice.number, date: invoice.issued_on },
      reason,
      jobs: creditedJobs(loaded, credited, totals),
      sums: paperSums(totals, kept.rules.prices, exempt, wasteWords),
    });
    const paperId = await issue(context, loaded, document, totals, null, {
      corrects: invoicePaperId,
      sheet: JSON.stringify(from),
    });
    await post(context, paperId, salePostings(totals, -1, kept.rules.prices === 'inclusive'));
    return { paperId, number, net: totals.net, tax: totals.tax, gross: totals.gross };
  },
};
