import { labelLines, labelPdf } from '../../core/paper/pdf/label-pdf.ts';
import { seenName, seenPdf } from '../../core/paper/pdf/seen-pdf.ts';
import type { Handlers } from '../context.ts';
import { checksOf } from '../order/checks.ts';
import { sampleFound } from '../order/samples.ts';
import { checkPaper, photosPaper, sampleLabel } from '../order/seen-paper.ts';
import { loadFonts } from '../pdf.ts';
import { notFound } from '../refusal.ts';

const text = (bytes: Uint8Array) => Buffer.from(bytes).toString('base64');

export const benchPapersHandlers: Handlers = {
  'check.paper': async ({ id }, context) => {
    const row = await context.tx
      .selectFrom('check_done')
      .select('work_order_id')
      .where('id', '=', id)
      .executeTakeFirst();
    const done = row && (await checksOf(context, row.work_order_id)).find((one) => one.id === id);
    if (!done) throw notFound('check_done', id);
    const paper = await checkPaper(context, row.work_order_id, done);
    return { name: `${seenName(paper)}.pdf`, base64: text(await seenPdf(paper, loadFonts())) };
  },
  'photo.paper': async ({ orderId }, context) => {
    const paper = await photosPaper(context, orderId);
    const base64 = text(await seenPdf(paper, loadFonts()));
    return { name: `${seenName(paper)}.pdf`, base64, photos: paper.pictures.length };
  },
  'sample.label': async ({ id }, context) => {
    const label = await sampleLabel(context, await sampleFound(context, id));
    const base64 = text(await labelPdf(label, loadFonts()));
    return { name: `${label.label}.pdf`, lines: [...labelLines(label)], base64 };
  },
};
