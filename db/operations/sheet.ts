import { markupsOf, offeredPrice } from '../../core/money/offered-price.ts';
import type { Handlers } from '../context.ts';
import { newId } from '../id.ts';
import { mendedBy } from '../order/findings.ts';
import { agreedAt, counts, storageOrders, visitOf } from '../order/storage.ts';
import { wholeOrder } from '../order/whole.ts';
import { settingsOf, signedIn } from '../people.ts';
import { badInput, held, notFound } from '../refusal.ts';
import { nextNumber } from '../series.ts';
import type { WorkOrderRow } from '../tables.ts';
import { readMileage } from './desk.ts';
import { givesAway, lineDiscountsFit, sheetDiscountFits } from './discount-right.ts';

import {
  addJob,
  addLine,
  given,
  jobColumns,
  jobFieldsOf,
  jobRow,
  lineColumns,
  lineFieldsOf,
  lineRow,
  lineWithinMost,
  namedByLine,
  openSheet,
  untouched,
} from './on-the-sheet.ts';
import { heldCar } from './quarantine.ts';

/** The head of an order as the contract names it: both values come back when two people change it at once. */
const headOf = (row: WorkOrderRow) => ({
  complaint: row.complaint,
  when: JSON.parse(row.when_it_happens) as string[],
  door: JSON.parse(row.door) as object,
  promiseAt: row.promise_at,
  promiseWords: row.promise_words,
  ownMaximum: row.own_maximum,
  poNumber: row.po_number,
  payerId: row.payer_id,
  oldPartsAnswer: row.old_parts_answer,
});

export const sheetHandlers: Handlers = {
  'order.get': ({ id }, context) => wholeOrder(context, id),
  'order.change': async ({ id, revision, change }, context) => {
    const before = await openSheet(context, id);
    if (change.payerId) {
      const payer = await context.tx
        .selectFrom('customer')
        .select('id')
        .where('id', '=', change.payerId)
        .executeTakeFirst();
      if (!payer) throw notFound('customer', change.payerId);
    }
    const patch: Partial<WorkOrderRow> = {
      ...(change.complaint === undefined ? {} : { complaint: change.complaint }),
      ...(change.when === undefined ? {} : { when_it_happens: JSON.stringify(change.when) }),
      ...(change.door === undefined
        ? {}
        : {
            door: JSON.stringify(change.door),
            storage_agreed_at: agreedAt(before, change.door, context.now),
          }),
      ...(change.promiseAt === undefined ? {} : { promise_at: change.promiseAt }),
      ...(change.promiseWords === undefined ? {} : { promise_words: change.promiseWords }),
      ...(change.ownMaximum === undefined ? {} : { own_maximum: change.ownMaximum }),
      ...(change.poNumber === undefined ? {} : { po_number: change.poNumber }),
      ...(change.payerId === undefined ? {} : { payer_id: change.payerId }),
      ...(change.oldPartsAnswer === undefined ? {} : { old_parts_answer: change.oldPartsAnswer }),
    };
    return {
      id,
      revision: await context.write.edit('work_order', id, revision, patch, change, headOf),
    };
  },
  'order.arrive': async ({ id, revision, mileage, mileageDoubt, door }, context) => {
    const order = await openSheet(context, id);
    if (order.arrived_at !== null) throw badInput('id', 'already-here');
    if (mileage !== null) await readMileage(context, order.car_id, id, mileage, mileageDoubt);
    const patch = {
      arrived_at: context.now,
      mileage_in: mileage,
      ...(door === undefined
        ? {}
        : { door: JSON.stringify(door), storage_agreed_at: agreedAt(order, door, context.now) }),
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
  'order.handOver': async ({ id, revision, to }, context) => {
    await heldCar(context, id);
    const order = await context.tx.selectFrom('work_order').selectAll().where('id', '=', id).executeTakeFirst();
    if (order && order.handed_over_at !== null) throw badInput('id', 'closed-already');
    const gone = { handed_over_at: context.now, handed_over_to: to };
    const next = await context.write.edit('work_order', id, revision, gone, { to }, (row) => ({
      to: row.handed_over_to,
    }));
    // The visit and the orders of its storage are about one car, which goes from all of them.
    const others = order === undefined ? [] : await storageOrders(context, (await visitOf(context, order)).id);
    for (const other of others.filter(counts)) {
      if (other.id === id || other.handed_over_at !== null) continue;
      await heldCar(context, other.id);
      await context.write.update('work_order', other.id, { ...gone, revision: other.revision + 1 });
    }
    return { id, revision: next };
  },
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
  'job.add': async ({ orderId, job, lines, findingId }, context) => {
    const added = await addJob(context, orderId, job, lines);
    if (lines.some((line) => line.discount !== null)) await lineDiscountsFit(context, orderId, added.lineIds);
    if (findingId !== null) await mendedBy(context, orderId, findingId, added.id);
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
    // On another visit its days would no longer be known as charged, and be charged again.
    if (job.storage_until !== null) throw held([{ what: 'storage-stays', with: {} }]);
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
      storage_of: null,
    });
    const lines = await context.tx
      .selectFrom('line')
      .selectAll()
      .where('job_id', '=', id)
      .where('taken_out', '=', 0)
      .orderBy('place')
      .execute();
    const moved = await addJob(
      context,
      orderId,
      jobFieldsOf(job),
      lines.map((line) => ({ ...lineFieldsOf(line), overlapJobId: null })),
      job.book_job_version_id,
    );
    if (job.first_job_id !== null)
      await context.write.update('job', moved.id, {
        first_job_id: job.first_job_id,
        comeback_cause: job.comeback_cause,
      });
    await context.write.edit('job', id, revision, { moved_to: orderId }, { movedTo: number }, jobFieldsOf);
    return { orderId, number };
  },
  'line.add': async ({ jobId, line }, context) => {
    const order = await openSheet(context, (await jobRow(context, jobId)).work_order_id);
    const offered = () => offeredPrice(line.kind, line.unitCost, markupsOf(settingsOf(context)));
    const unitPrice = line.unitPrice ?? offered();
    if (unitPrice === null) throw badInput('line.unitPrice', 'price-needed');
    const id = await addLine(context, jobId, { ...line, unitPrice });
    if (line.discount !== null) await lineDiscountsFit(context, order.id, [id]);
    return { id, revision: 1 };
  },
  'line.change': async ({ id, revision, change }, context) => {
    const row = await lineRow(context, id);
    const was = lineFieldsOf(row);
    const fields = { ...was, ...given(change) };
    lineWithinMost('change', fields);
    await namedByLine(context, row.job_id, { overlapJobId: null, partId: null, people: [], ...given(change) });
    const next = await context.write.edit('line', id, revision, lineColumns(fields), change, lineFieldsOf);
    if (givesAway(was, fields))
      await lineDiscountsFit(context, (await jobRow(context, row.job_id)).work_order_id, [id]);
    return { id, revision: next };
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
    await sheetDiscountFits(context, orderId, on);
    return { id, revision: 1 };
  },
  'discount.takeOut': async ({ id }, context) => {
    const row = await context.tx.selectFrom('sheet_discount').selectAll().where('id', '=', id).executeTakeFirst();
    if (!row) throw notFound('sheet_discount', id);
    await openSheet(context, row.work_order_id);
    await context.write.update('sheet_discount', id, { taken_out: 1 });
    return { id };
  },
};
