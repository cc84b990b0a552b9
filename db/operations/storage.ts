import { lineFields } from '../../core/contract/whole-order.ts';
import { reckonSheet } from '../../core/money/totals.ts';
import { amountText } from '../../core/paper/figures.ts';
import { paperWords } from '../../core/paper/words.ts';
import type { Context, Handlers } from '../context.ts';
import { newId } from '../id.ts';
import { currencyOf } from '../order/document.ts';
import { loadOrder } from '../order/load.ts';
import { reckonOrder } from '../order/reckon.ts';
import { agreedStorage, storageJob, storageOf } from '../order/storage.ts';
import { settingsOf, signedIn } from '../people.ts';
import { held, notFound } from '../refusal.ts';
import { addJob, lineColumns, openSheet } from './on-the-sheet.ts';

type Storage = Awaited<ReturnType<typeof storageOf>>;

/** The fee as a line of the sheet, with its reckoning in words. */
function feeLine(context: Context, { days, freeWorkingDays, perDay }: Storage) {
  const settings = settingsOf(context);
  const words = paperWords(settings.language).storageFee(
    days,
    freeWorkingDays,
    amountText(perDay, currencyOf(settings)),
  );
  return lineFields.parse({ kind: 'fee', words, quantity: days * 1000, unitPrice: perDay });
}

/** Writes the fee onto the sheet, or brings the one that stands there up to the day; the job. */
async function putOnSheet(context: Context, orderId: string, storage: Storage): Promise<string> {
  const { tx, write } = context;
  const line = feeLine(context, storage);
  const standing = await storageJob(context, orderId);
  if (standing === undefined) {
    const title = paperWords(settingsOf(context).language).storageTitle;
    const fields = { title, kind: 'charged' as const, fixedPrice: null, note: '', bearer: '', offered: false };
    const { id } = await addJob(context, orderId, fields, [line]);
    await write.update('job', id, { storage_until: storage.until });
    return id;
  }
  const row = await tx
    .selectFrom('line')
    .select(['id', 'revision'])
    .where('job_id', '=', standing.id)
    .where('kind', '=', 'fee')
    .where('taken_out', '=', 0)
    .executeTakeFirst();
  if (row === undefined) throw notFound('line', standing.id);
  await write.update('line', row.id, { ...lineColumns(line), revision: row.revision + 1 });
  await write.update('job', standing.id, { storage_until: storage.until, revision: standing.revision + 1 });
  return standing.id;
}

export const storageHandlers: Handlers = {
  'storage.charge': async ({ orderId, until }, context) => {
    const order = await openSheet(context, orderId);
    const agreed = agreedStorage(order.door);
    const storage = await storageOf(context, order, until);
    if (agreed === null) throw held([{ what: 'storage-not-agreed', with: {} }]);
    if (storage.days === 0) throw held([{ what: 'storage-none-due', with: {} }]);
    if (storage.chargedUntil !== null && storage.chargedUntil >= storage.until)
      throw held([{ what: 'storage-charged', with: { until: storage.chargedUntil } }]);
    const settings = settingsOf(context);
    const before = reckonOrder(await loadOrder(context, orderId), settings);
    const jobId = await putOnSheet(context, orderId, storage);
    const loaded = await loadOrder(context, orderId);
    const after = reckonOrder(loaded, settings);
    const jobs = after.sheet.jobs.filter((job) => job.id === jobId || after.yes.covered.has(job.id));
    const more = reckonSheet({ ...after.sheet, jobs }, after.rules).gross - before.yes.coveredTotal;
    const ceiling = before.yes.ceiling + more;
    if (order.own_maximum !== null && ceiling > order.own_maximum)
      throw held([
        { what: 'over-own-maximum', with: { maximum: order.own_maximum, excess: ceiling - order.own_maximum } },
      ]);
    // What was agreed at the door is the customer's yes to the fee: it is written down with when and how that was.
    const strokes = (JSON.parse(order.door) as { strokes?: unknown[] | null }).strokes ?? null;
    const signed = strokes !== null && strokes.length > 0;
    const perDay = `${amountText(agreed.perDay, currencyOf(settings))} ${settings.currency}`;
    const decisionId = newId();
    await context.write.insert('decision', {
      ...{ id: decisionId, work_order_id: orderId, number: loaded.decisions.length + 1 },
      ...{ at: order.storage_agreed_at ?? order.opened_at, recorded_at: context.now, ceiling },
      ...{ spoken_name: loaded.customer.name, spoken_role: 'customer', way: signed ? 'signed' : 'person', reached: '' },
      words: paperWords(settings.language).storage(perDay, agreed.freeWorkingDays, settings.prices === 'exclusive'),
      ...{ quote_paper_id: null, strokes: signed ? JSON.stringify(strokes) : null },
      ...{ on_sheet: after.totals.gross, person_id: signedIn(context).id },
    });
    await context.write.insert('decision_job', {
      ...{ id: newId(), decision_id: decisionId, job_id: jobId, answer: 'yes' },
      ...{ amount: after.totals.jobs.get(jobId) ?? 0, risk: '', unsafe: 0 },
      ...{ follow_up_on: null, follow_up_mileage: null },
    });
    return { jobId, decisionId, days: storage.days, gross: more };
  },
};
