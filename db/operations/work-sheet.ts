import { workSheetName, workSheetPdf } from '../../core/paper/pdf/work-sheet-pdf.ts';
import type { WorkSheetDocument } from '../../core/paper/work-sheet.ts';
import type { Context, Handlers } from '../context.ts';
import { bookContent } from '../order/book-content.ts';
import { loadOrder } from '../order/load.ts';
import { loadFonts } from '../pdf.ts';
import { notFound } from '../refusal.ts';
import { bookWorkSheet, visitWorkSheet } from '../work-sheet.ts';

async function ofVisit(context: Context, jobId: string): Promise<WorkSheetDocument> {
  const job = await context.tx.selectFrom('job').selectAll().where('id', '=', jobId).executeTakeFirst();
  if (!job) throw notFound('job', jobId);
  const loaded = await loadOrder(context, job.work_order_id);
  const version = loaded.versions.find((one) => one.id === job.book_job_version_id);
  // A job that was typed has no procedure.
  if (!version) throw notFound('book_job_version', jobId);
  return visitWorkSheet(context, loaded, jobId, { version: version.version, content: bookContent(version) });
}

async function ofVersion(context: Context, versionId: string): Promise<WorkSheetDocument> {
  const row = await context.tx
    .selectFrom('book_job_version')
    .selectAll()
    .where('id', '=', versionId)
    .executeTakeFirst();
  if (!row) throw notFound('book_job_version', versionId);
  return bookWorkSheet(context, { version: row.version, content: bookContent(row) });
}

export const workSheetHandlers: Handlers = {
  'workSheet.pdf': async (input, context) => {
    const document = 'jobId' in input ? await ofVisit(context, input.jobId) : await ofVersion(context, input.versionId);
    const bytes = await workSheetPdf(document, loadFonts());
    const name = workSheetName(document).replace(/[^\p{L}\p{N} ,.-]/gu, '');
    return { name: `${name}.pdf`, base64: Buffer.from(bytes).toString('base64') };
  },
};
