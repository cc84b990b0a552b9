import type { z } from 'zod';
import type { jobFields, lineFields } from '../../core/contract/whole-order.ts';
import { MOST, withinMost } from '../../core/money/most.ts';
import { accountOf, creditOf } from '../account.ts';
import type { Context } from '../context.ts';
import { newId } from '../id.ts';
import { poHoldsWork } from '../order/facts.ts';
import { type Loaded, loadOrder } from '../order/load.ts';
import { letterOf, reckonOrder } from '../order/reckon.ts';
import { settingsOf } from '../people.ts';
import { badInput, held, notFound } from '../refusal.ts';
import type { JobRow, LineRow, WorkOrderRow } from '../tables.ts';

type LineFields = z.output<typeof lineFields>;
type JobFields = z.output<typeof jobFields>;

export const lineColumns = (fields: LineFields) => ({
  kind: fields.kind,
  words: fields.words,
  part_number: fields.partNumber,
  part_id: fields.partId,
  condition: fields.condition,
  quantity: fields.quantity,
  unit: fields.unit,
  unit_price: fields.unitPrice,
  discount: fields.discount === null ? null : JSON.stringify(fields.discount),
  billing: fields.billing,
  book: fields.book,
  overlap: fields.overlap,
  overlap_job_id: fields.overlapJobId,
  people: JSON.stringify(fields.people),
  supplier: fields.supplier,
  unit_cost: fields.unitCost,
});

export const lineFieldsOf = (row: LineRow): LineFields => ({
  kind: row.kind,
  words: row.words,
  partNumber: row.part_number,
  partId: row.part_id,
  condition: row.condition,
  quantity: row.quantity,
  unit: row.unit,
  unitPrice: row.unit_price,
  discount: row.discount === null ? null : (JSON.parse(row.discount) as LineFields['discount']),
  billing: row.billing,
  book: row.book,
  overlap: row.overlap,
  overlapJobId: row.overlap_job_id,
  people: JSON.parse(row.people) as LineFields['people'],
  supplier: row.supplier,
  unitCost: row.unit_cost,
});

export const jobColumns = (fields: JobFields) => ({
  title: fields.title,
  kind: fields.kind,
  fixed_price: fields.fixedPrice,
  note: fields.note,
  bearer: fields.bearer,
  offered: fields.offered ? (1 as const) : (0 as const),
});

export const jobFieldsOf = (row: JobRow): JobFields => ({
  title: row.title,
  kind: row.kind,
  fixedPrice: row.fixed_price,
  note: row.note,
  bearer: row.bearer,
  offered: row.offered === 1,
});

export const given = <T extends object>(change: T) =>
  Object.fromEntries(Object.entries(change).filter(([, value]) => value !== undefined));

/** The order that a job stands on. After its invoice the sheet is closed: a credit note corrects it. */
export async function openSheet(context: Context, orderId: string): Promise<WorkOrderRow> {
  const order = await context.tx.selectFrom('work_order').selectAll().where('id', '=', orderId).executeTakeFirst();
  if (!order) throw notFound('order', orderId);
  const invoice = await context.tx
    .selectFrom('paper')
    .select('number')
    .where('work_order_id', '=', orderId)
    .where('kind', '=', 'invoice')
    .executeTakeFirst();
  if (invoice) throw held([{ what: 'invoiced', with: { number: invoice.number } }]);
  return order;
}

export async function jobRow(context: Context, id: string): Promise<JobRow> {
  const job = await context.tx.selectFrom('job').selectAll().where('id', '=', id).executeTakeFirst();
  if (!job) throw notFound('job', id);
  return job;
}

export async function lineRow(context: Context, id: string): Promise<LineRow> {
  const line = await context.tx.selectFrom('line').selectAll().where('id', '=', id).executeTakeFirst();
  if (!line) throw notFound('line', id);
  await openSheet(context, (await jobRow(context, line.job_id)).work_order_id);
  return line;
}

/** Refuses a line that comes to more than a sheet can hold, as sold or as bought. `path` names it in the input. */
export function lineWithinMost(path: string, { quantity, book, unitPrice, unitCost }: LineFields): void {
  if (!withinMost(Math.max(quantity, book), Math.max(unitPrice, unitCost ?? 0)))
    throw badInput(path, 'too-much', { most: MOST });
}

/** What a line names is there: a part, people, and for overlap a job of the same order. Throws not-found. */
export async function namedByLine(
  { tx }: Context,
  jobId: string,
  { overlapJobId, partId, people }: Pick<LineFields, 'overlapJobId' | 'partId' | 'people'>,
): Promise<void> {
  if (overlapJobId !== null) {
    const both = await tx
      .selectFrom('job')
      .innerJoin('job as other', 'other.work_order_id', 'job.work_order_id')
      .select('other.id')
      .where('job.id', '=', jobId)
      .where('other.id', '=', overlapJobId)
      .executeTakeFirst();
    if (!both) throw notFound('job', overlapJobId);
  }
  if (partId !== null) {
    const part = await tx.selectFrom('part').select('id').where('id', '=', partId).executeTakeFirst();
    if (!part) throw notFound('part', partId);
  }
  for (const { personId } of people) {
    const person = await tx.selectFrom('person').select('id').where('id', '=', personId).executeTakeFirst();
    if (!person) throw notFound('person', personId);
  }
}

export async function addLine(context: Context, jobId: string, fields: LineFields, path = 'line'): Promise<string> {
  lineWithinMost(path, fields);
  await namedByLine(context, jobId, fields);
  const last = await context.tx
    .selectFrom('line')
    .select('place')
    .where('job_id', '=', jobId)
    .orderBy('place', 'desc')
    .limit(1)
    .executeTakeFirst();
  const id = newId();
  await context.write.insert('line', {
    id,
    revision: 1,
    job_id: jobId,
    place: (last?.place ?? -1) + 1,
    ...lineColumns(fields),
    given: 0,
    give_why: '',
    taken_out: 0,
  });
  return id;
}

export async function addJob(
  context: Context,
  orderId: string,
  fields: JobFields,
  lines: readonly LineFields[],
  versionId: string | null = null,
) {
  await openSheet(context, orderId);
  const last = await context.tx
    .selectFrom('job')
    .select('place')
    .where('work_order_id', '=', orderId)
    .orderBy('place', 'desc')
    .limit(1)
    .executeTakeFirst();
  const place = (last?.place ?? -1) + 1;
  const id = newId();
  await context.write.insert('job', {
    id,
    revision: 1,
    work_order_id: orderId,
    place,
    ...jobColumns(fields),
    given: 0,
    give_why: '',
    taken_out: 0,
    book_job_version_id: versionId,
    moved_to: null,
    first_job_id: null,
    comeback_cause: null,
    storage_until: null,
    storage_last: null,
  });
  const lineIds = [];
  for (const [at, line] of lines.entries()) lineIds.push(await addLine(context, id, line, `lines.${at}`));
  return { id, revision: 1, letter: letterOf(place), lineIds };
}

/** A job that somebody said yes to or clocked on is not simply taken away. */
export async function untouched(context: Context, job: JobRow): Promise<void> {
  await openSheet(context, job.work_order_id);
  const clocked = await context.tx
    .selectFrom('clock_entry')
    .select('id')
    .where('job_id', '=', job.id)
    .executeTakeFirst();
  const running = await context.tx
    .selectFrom('clock_open')
    .select('person_id')
    .where('job_id', '=', job.id)
    .executeTakeFirst();
  const issued = await context.tx.selectFrom('part_move').select('id').where('job_id', '=', job.id).executeTakeFirst();
  if (clocked || running || issued) throw held([{ what: 'job-worked-on', with: { letter: letterOf(job.place) } }]);
}

/** Work on a job is held until a yes covers it and the covered jobs are inside their ceiling. */
export async function heldUnlessCovered(context: Context, jobId: string): Promise<JobRow> {
  const job = await jobRow(context, jobId);
  await openSheet(context, job.work_order_id);
  const loaded = await loadOrder(context, job.work_order_id);
  const reckoned = reckonOrder(loaded, settingsOf(context));
  if (!reckoned.yes.covered.has(jobId))
    throw held([{ what: 'job-without-yes', with: { letter: letterOf(job.place) } }]);
  const { coveredExcess } = reckoned.yes;
  if (coveredExcess > 0)
    throw held([
      context.seesPrices
        ? { what: 'over-the-yes', with: { excess: coveredExcess } }
        : { what: 'beyond-the-yes', with: {} },
    ]);
  await heldByAccount(context, loaded);
  return job;
}

/** Work waits while an account's own order number is missing that it wants first, and while it is over its limit. */
async function heldByAccount(context: Context, loaded: Loaded): Promise<void> {
  const { name } = accountOf(loaded);
  if (poHoldsWork(loaded)) throw held([{ what: 'po-before-work', with: { name } }]);
  const credit = await creditOf(context, loaded);
  if (!credit?.held) return;
  throw held([
    credit.figures === null
      ? { what: 'beyond-credit-limit', with: { name } }
      : { what: 'over-credit-limit', with: { name, over: credit.figures.over } },
  ]);
}
