import type { z } from 'zod';
import type { jobFields, lineFields } from '../../core/contract/sheet.ts';
import type { Context, Handlers } from '../context.ts';
import { newId } from '../id.ts';
import { loadOrder } from '../order/load.ts';
import { letterOf, reckonOrder } from '../order/reckon.ts';
import { wholeOrder } from '../order/whole.ts';
import { settingsOf, signedIn } from '../people.ts';
import { badInput, held, notFound } from '../refusal.ts';
import { nextNumber } from '../series.ts';
import type { JobRow, LineRow, WorkOrderRow } from '../tables.ts';
import { readMileage } from './desk.ts';

type LineFields = z.output<typeof lineFields>;
type JobFields = z.output<typeof jobFields>;

const lineColumns = (fields: LineFields) => ({
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

const lineFieldsOf = (row: LineRow): LineFields => ({
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

const jobColumns = (fields: JobFields) => ({
  title: fields.title,
  kind: fields.kind,
  fixed_price: fields.fixedPrice,
  note: fields.note,
  bearer: fields.bearer,
  offered: fields.offered ? (1 as const) : (0 as const),
});

const jobFieldsOf = (row: JobRow): JobFields => ({
  title: row.title,
  kind: row.kind,
  fixedPrice: row.fixed_price,
  note: row.note,
  bearer: row.bearer,
  offered: row.offered === 1,
});

const given = <T extends object>(change: T) =>
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

async function lineRow(context: Context, id: string): Promise<LineRow> {
  const line = await context.tx.selectFrom('line').selectAll().where('id', '=', id).executeTakeFirst();
  if (!line) throw notFound('line', id);
  await openSheet(context, (await jobRow(context, line.job_id)).work_order_id);
  return line;
}

async function addLine(context: Context, jobId: string, fields: LineFields): Promise<string> {
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
  });
  const lineIds = [];
  for (const line of lines) lineIds.push(await addLine(context, id, line));
  return { id, revision: 1, letter: letterOf(place), lineIds };
}

/** A job that somebody said yes to or clocked on is not simply taken away. */
async function untouched(context: Context, job: JobRow): Promise<void> {
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

export const sheetHandlers: Handlers = {
  'order.get': ({ id }, context) => wholeOrder(context, id),
  'order.change': async ({ id, revision, change }, context) => {
    await openSheet(context, id);
    const patch: Partial<WorkOrderRow> = {
      ...(change.complaint === undefined ? {} : { complaint: change.complaint }),
      ...(change.when === undefined ? {} : { when_it_happens: JSON.stringify(change.when) }),
      ...(change.door === undefined ? {} : { door: JSON.stringify(change.door) }),
      ...(change.promiseAt === undefined ? {} : { promise_at: change.promiseAt }),
      ...(change.promiseWords === undefined ? {} : { promise_words: change.promiseWords }),
      ...(change.ownMaximum === undefined ? {} : { own_maximum: change.ownMaximum }),
      ...(change.poNumber === undefined ? {} : { po_number: change.poNumber }),
      ...(change.payerId === undefined ? {} : { payer_id: change.payerId }),
      ...(change.oldPartsAnswer === undefined ? {} : { old_parts_answer: change.oldPartsAnswer }),
    };
    return {
      id,
      revision: await context.write.edit('work_order', id, revision, patch, change, (row) => ({
        complaint: row.complaint,
        promiseAt: row.promise_at,
        promiseWords: row.promise_words,
        poNumber: row.po_number,
        ownMaximum: row.own_maximum,
      })),
    };
  },
  'order.arrive': async ({ id, revision, mileage, mileageDoubt, door }, context) => {
    const order = await openSheet(context, id);
    if (order.arrived_at !== null) throw badInput('id', 'already-here');
    if (mileage !== null) await readMileage(context, order.car_id, id, mileage, mileageDoubt);
    const patch = {
      arrived_at: context.now,
      mileage_in: mileage,
      ...(door === undefined ? {} : { door: JSON.stringify(door) }),
    };
    return {
      id,
      revision: await context.write.edit('work_order', id, revision, patch, { mileage }, (row) => ({
        mileage: row.mileage_in,
      })),
    };
  },
  'order.mileageOut': async ({ id, revision, mileage }, context) => {
    const order = await openSheet(context, id);
    if (order.mileage_in !== null && mileage < order.mileage_in)
      throw badInput('mileage', 'below-mileage-in', { in: order.mileage_in });
    await readMileage(context, order.car_id, id, mileage, 'none');
    return {
      id,
      revision: await context.write.edit('work_order', id, revision, { mileage_out: mileage }, { mileage }, (row) => ({
        mileage: row.mileage_out,
      })),
    };
  },
  'order.handOver': async ({ id, revision, to }, context) => ({
    id,
    revision: await context.write.edit(
      'work_order',
      id,
      revision,
      { handed_over_at: context.now, handed_over_to: to },
      { to },
      (row) => ({ to: row.handed_over_to }),
    ),
  }),
  'order.cancel': async ({ id, revision, why }, context) => {
    await openSheet(context, id);
    return {
      id,
      revision: await context.write.edit(
        'work_order',
        id,
        revision,
        { cancelled_at: context.now, cancel_why: why },
        { why },
        (row) => ({ why: row.cancel_why }),
      ),
    };
  },
  'finding.add': async ({ orderId, text, urgency }, context) => {
    await openSheet(context, orderId);
    const id = newId();
    await context.write.insert('finding', {
      id,
      revision: 1,
      work_order_id: orderId,
      text,
      urgency,
      job_id: null,
      person_id: signedIn(context).id,
      at: context.now,
    });
    return { id, revision: 1 };
  },
  'finding.change': async ({ id, revision, text, urgency, jobId }, context) => {
    const patch = {
      ...(text === undefined ? {} : { text }),
      ...(urgency === undefined ? {} : { urgency }),
      ...(jobId === undefined ? {} : { job_id: jobId }),
    };
    return {
      id,
      revision: await context.write.edit('finding', id, revision, patch, { text, urgency }, (row) => ({
        text: row.text,
        urgency: row.urgency,
      })),
    };
  },
  'job.add': async ({ orderId, job, lines, findingId }, context) => {
    const added = await addJob(context, orderId, job, lines);
    if (findingId !== null) await context.write.update('finding', findingId, { job_id: added.id });
    return added;
  },
  'job.change': async ({ id, revision, change }, context) => {
    const row = await jobRow(context, id);
    await openSheet(context, row.work_order_id);
    const fields = Object.assign(jobFieldsOf(row), given(change));
    return { id, revision: await context.write.edit('job', id, revision, jobColumns(fields), change, jobFieldsOf) };
  },
  'job.takeOut': async ({ id, revision }, context) => {
    await untouched(context, await jobRow(context, id));
    return {
      id,
      revision: await context.write.edit('job', id, revision, { taken_out: 1 }, { takenOut: true }, jobFieldsOf),
    };
  },
  'job.putBack': async ({ id, revision }, context) => {
    await openSheet(context, (await jobRow(context, id)).work_order_id);
    return {
      id,
      revision: await context.write.edit('job', id, revision, { taken_out: 0 }, { takenOut: false }, jobFieldsOf),
    };
  },
  'job.give': async ({ id, revision, given: free, why }, context) => {
    await openSheet(context, (await jobRow(context, id)).work_order_id);
    return {
      id,
      revision: await context.write.edit(
        'job',
        id,
        revision,
        { given: free ? 1 : 0, give_why: why },
        { given: free },
        jobFieldsOf,
      ),
    };
  },
  'job.moveOut': async ({ id, revision }, context) => {
    const job = await jobRow(context, id);
    await untouched(context, job);
    const order = await openSheet(context, job.work_order_id);
    const orderId = newId();
    const number = await nextNumber(context, 'order');
    await context.write.insert('work_order', {
      ...order,
      id: orderId,
      revision: 1,
      number,
      opened_at: context.now,
      opened_by: signedIn(context).id,
      promise_at: null,
      promise_words: '',
      mileage_out: null,
      own_maximum: null,
    });
    const lines = await context.tx
      .selectFrom('line')
      .selectAll()
      .where('job_id', '=', id)
      .where('taken_out', '=', 0)
      .orderBy('place')
      .execute();
    await addJob(
      context,
      orderId,
      jobFieldsOf(job),
      lines.map((line) => ({ ...lineFieldsOf(line), overlapJobId: null })),
      job.book_job_version_id,
    );
    await context.write.edit('job', id, revision, { moved_to: orderId }, { movedTo: number }, jobFieldsOf);
    return { orderId, number };
  },
  'line.add': async ({ jobId, line }, context) => {
    await openSheet(context, (await jobRow(context, jobId)).work_order_id);
    return { id: await addLine(context, jobId, line), revision: 1 };
  },
  'line.change': async ({ id, revision, change }, context) => {
    const fields = Object.assign(lineFieldsOf(await lineRow(context, id)), given(change));
    return { id, revision: await context.write.edit('line', id, revision, lineColumns(fields), change, lineFieldsOf) };
  },
  'line.takeOut': async ({ id, revision }, context) => {
    await lineRow(context, id);
    return {
      id,
      revision: await context.write.edit('line', id, revision, { taken_out: 1 }, { takenOut: true }, lineFieldsOf),
    };
  },
  'line.putBack': async ({ id, revision }, context) => {
    await lineRow(context, id);
    return {
      id,
      revision: await context.write.edit('line', id, revision, { taken_out: 0 }, { takenOut: false }, lineFieldsOf),
    };
  },
  'line.give': async ({ id, revision, given: free, why }, context) => {
    await lineRow(context, id);
    return {
      id,
      revision: await context.write.edit(
        'line',
        id,
        revision,
        { given: free ? 1 : 0, give_why: why },
        { given: free },
        lineFieldsOf,
      ),
    };
  },
  'discount.add': async ({ orderId, on, reduction, words }, context) => {
    await openSheet(context, orderId);
    const id = newId();
    await context.write.insert('sheet_discount', {
      id,
      work_order_id: orderId,
      on_what: on,
      reduction: JSON.stringify(reduction),
      words,
      taken_out: 0,
    });
    return { id, revision: 1 };
  },
  'discount.takeOut': async ({ id }, context) => {
    await context.write.update('sheet_discount', id, { taken_out: 1 });
    return { id };
  },
};

/** Work on a job is held until a yes covers it and the covered jobs are inside their ceiling. */
export async function heldUnlessCovered(context: Context, jobId: string): Promise<JobRow> {
  const job = await jobRow(context, jobId);
  await openSheet(context, job.work_order_id);
  const reckoned = reckonOrder(await loadOrder(context, job.work_order_id), settingsOf(context));
  if (!reckoned.yes.covered.has(jobId))
    throw held([{ what: 'job-without-yes', with: { letter: letterOf(job.place), title: job.title } }]);
  if (reckoned.yes.coveredExcess > 0) {
    throw held([{ what: 'over-the-yes', with: context.seesPrices ? { excess: reckoned.yes.coveredExcess } : {} }]);
  }
  return job;
}
