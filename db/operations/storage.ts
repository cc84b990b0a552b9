import { atTheDoor } from '../../core/contract/desk.ts';
import { lineFields } from '../../core/contract/whole-order.ts';
import { reckonSheet } from '../../core/money/totals.ts';
import { lastCharged } from '../../core/order/storage.ts';
import { amountText } from '../../core/paper/figures.ts';
import { paperWords } from '../../core/paper/words.ts';
import type { Context, Handlers } from '../context.ts';
import { newId } from '../id.ts';
import { currencyOf } from '../order/document.ts';
import { loadOrder } from '../order/load.ts';
import { reckonOrder } from '../order/reckon.ts';
import { agreedStorage, counts, storageOf, visitOf } from '../order/storage.ts';
import { settingsOf, signedIn } from '../people.ts';
import { badInput, held, notFound } from '../refusal.ts';
import { nextNumber } from '../series.ts';
import type { WorkOrderRow } from '../tables.ts';
import { standingCustomer } from './customer.ts';
import { addJob, lineColumns } from './on-the-sheet.ts';

type Storage = Awaited<ReturnType<typeof storageOf>>;

/** The fee as a line of the sheet, with its reckoning in words; the free days are told where the first day is charged. */
function feeLine(context: Context, { days, daysInAll, freeWorkingDays, perDay }: Storage) {
  const settings = settingsOf(context);
  const words = paperWords(settings.language).storageFee(
    days,
    days === daysInAll ? freeWorkingDays : 0,
    amountText(perDay, currencyOf(settings)),
  );
  return lineFields.parse({ kind: 'fee', words, quantity: days * 1000, unitPrice: perDay });
}

/** Writes the fee onto the sheet, or brings the one that stands there up to the day; the job. */
async function putOnSheet(context: Context, orderId: string, visit: WorkOrderRow, storage: Storage): Promise<string> {
  const { tx, write } = context;
  const line = feeLine(context, storage);
  const { standing, until: storage_until, firstCharged, days } = storage;
  const charged = { storage_until, storage_last: firstCharged === null ? null : lastCharged({ firstCharged, days }) };
  if (standing === null) {
    const words = paperWords(settingsOf(context).language);
    // On an order of its own it says whose storage it is.
    const title =
      orderId === visit.id ? words.storageTitle : `${words.storageTitle}, ${words.forOrder(String(visit.number))}`;
    const fields = { title, kind: 'charged' as const, fixedPrice: null, note: '', bearer: '', offered: false };
    const { id } = await addJob(context, orderId, fields, [line]);
    await write.update('job', id, charged);
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
  await write.update('job', standing.id, { ...charged, revision: standing.revision + 1 });
  return standing.id;
}

/**
 * The order whose sheet takes the fee: that of the visit, and once its invoice is out one that is open for its storage, or
 * a new one. The car is the same and as much here, so the new order is handed over with the visit's.
 */
async function orderFor(context: Context, visit: WorkOrderRow, { orders }: Storage): Promise<string> {
  const open = orders.filter(counts).find((order) => order.invoiced === 0);
  if (open) return open.id;
  const { write, now } = context;
  const id = newId();
  const nothing = { mileage_in: null, mileage_out: null, cancelled_at: null, promise_at: null, own_maximum: null };
  const unsaid = { cancel_why: '', promise_words: '', po_number: '', old_parts_answer: '' };
  await write.insert('work_order', {
    ...visit,
    ...nothing,
    ...unsaid,
    ...{ id, revision: 1, number: await nextNumber(context, 'order'), opened_at: now, opened_by: signedIn(context).id },
    customer_id: await standingCustomer(context, visit.customer_id),
    // Nobody said anything: the job of the fee tells what it is.
    ...{ complaint: '', when_it_happens: '[]', door: JSON.stringify(atTheDoor.parse({})) },
    ...{ arrived_at: now, storage_agreed_at: null, storage_of: visit.id },
  });
  return id;
}

/** What invoices of these orders came to, minor units. */
async function invoicedSum({ tx }: Context, orders: Storage['orders']): Promise<number> {
  const rows = await tx
    .selectFrom('paper')
    .select(['kind', 'gross'])
    .where(
      'work_order_id',
      'in',
      orders.map(({ id }) => id),
    )
    .execute();
  return rows.reduce(
    (sum, { kind, gross }) => sum + (kind === 'invoice' ? gross : kind === 'credit-note' ? -gross : 0),
    0,
  );
}

export const storageHandlers: Handlers = {
  'storage.charge': async ({ orderId: askedId, until }, context) => {
    const asked = await context.tx.selectFrom('work_order').selectAll().where('id', '=', askedId).executeTakeFirst();
    if (!asked) throw notFound('order', askedId);
    if (until !== null && until > context.today) throw badInput('until', 'in-the-future');
    const visit = await visitOf(context, asked);
    const agreed = agreedStorage(visit.door);
    const storage = await storageOf(context, visit, until);
    if (agreed === null) throw held([{ what: 'storage-not-agreed', with: {} }]);
    if (storage.days === 0) throw held([{ what: 'storage-none-due', with: {} }]);
    if (storage.chargedUntil !== null && storage.chargedUntil >= storage.until)
      throw held([{ what: 'storage-charged', with: { until: storage.chargedUntil } }]);
    const settings = settingsOf(context);
    const orderId = await orderFor(context, visit, storage);
    const before = reckonOrder(await loadOrder(context, orderId), settings);
    const jobId = await putOnSheet(context, orderId, visit, storage);
    const loaded = await loadOrder(context, orderId);
    const after = reckonOrder(loaded, settings);
    const jobs = after.sheet.jobs.filter((job) => job.id === jobId || after.yes.covered.has(job.id));
    const more = reckonSheet({ ...after.sheet, jobs }, after.rules).gross - before.yes.coveredTotal;
    const ceiling = before.yes.ceiling + more;
    // The most that they want to spend is meant for the visit with its storage.
    const spent = ceiling + (await invoicedSum(context, storage.orders));
    if (visit.own_maximum !== null && spent > visit.own_maximum)
      throw held([
        { what: 'over-own-maximum', with: { maximum: visit.own_maximum, excess: spent - visit.own_maximum } },
      ]);
    // What was agreed at the door is the customer's yes to the fee: it is written down with when and how that was.
    const strokes = (JSON.parse(visit.door) as { strokes?: unknown[] | null }).strokes ?? null;
    const signed = strokes !== null && strokes.length > 0;
    const perDay = `${amountText(agreed.perDay, currencyOf(settings))} ${settings.currency}`;
    const decisionId = newId();
    await context.write.insert('decision', {
      ...{ id: decisionId, work_order_id: orderId, number: loaded.decisions.length + 1 },
      ...{ at: visit.storage_agreed_at ?? visit.opened_at, recorded_at: context.now, ceiling },
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
    return { orderId, number: loaded.order.number, jobId, decisionId, days: storage.days, gross: more };
  },
};
