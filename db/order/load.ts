import type { Context } from '../context.ts';
import { notFound } from '../refusal.ts';

/** Every row that an order is made of, read once. Throws not-found. */
export async function loadOrder(context: Context, id: string) {
  const { tx } = context;
  const order = await tx.selectFrom('work_order').selectAll().where('id', '=', id).executeTakeFirst();
  if (!order) throw notFound('order', id);
  const customer = await tx
    .selectFrom('customer')
    .selectAll()
    .where('id', '=', order.customer_id)
    .executeTakeFirstOrThrow();
  const payer =
    order.payer_id === null
      ? null
      : await tx.selectFrom('customer').selectAll().where('id', '=', order.payer_id).executeTakeFirstOrThrow();
  const car = await tx.selectFrom('car').selectAll().where('id', '=', order.car_id).executeTakeFirstOrThrow();
  const allJobs = await tx.selectFrom('job').selectAll().where('work_order_id', '=', id).orderBy('place').execute();
  const jobs = allJobs.filter((job) => job.taken_out === 0 && job.moved_to === null);
  const jobIds = allJobs.map((job) => job.id);
  const inJobs = jobIds.length > 0 ? jobIds : [''];
  const lines = await tx
    .selectFrom('line')
    .selectAll()
    .where('job_id', 'in', inJobs)
    .where('taken_out', '=', 0)
    .orderBy('place')
    .execute();
  const decisions = await tx
    .selectFrom('decision')
    .selectAll()
    .where('work_order_id', '=', id)
    .orderBy('number')
    .execute();
  const decided = await tx
    .selectFrom('decision_job')
    .innerJoin('decision', 'decision.id', 'decision_job.decision_id')
    .selectAll('decision_job')
    .where('decision.work_order_id', '=', id)
    .orderBy('decision.number')
    .execute();
  const entries = await tx
    .selectFrom('clock_entry')
    .selectAll()
    .where('job_id', 'in', inJobs)
    .orderBy('on_at')
    .execute();
  const running = await tx.selectFrom('clock_open').selectAll().where('job_id', 'in', inJobs).execute();
  const steps = await tx
    .selectFrom('step_done')
    .selectAll()
    .where('job_id', 'in', inJobs)
    .orderBy('recorded_at')
    .orderBy('id')
    .execute();
  const touched = await tx
    .selectFrom('torque_entry')
    .selectAll()
    .where('job_id', 'in', inJobs)
    .orderBy('recorded_at')
    .orderBy('id')
    .execute();
  const wrenches = new Map(
    touched.length === 0 && steps.every((row) => row.wrench_id === null)
      ? []
      : (await tx.selectFrom('wrench').select(['id', 'name']).execute()).map((row) => [row.id, row.name]),
  );
  const quarantines = await tx
    .selectFrom('quarantine')
    .selectAll()
    .where('work_order_id', '=', id)
    .orderBy('at')
    .orderBy('id')
    .execute();
  const checks = await tx
    .selectFrom('check_done')
    .select(['check_list_id', 'person_id', 'at'])
    .where('work_order_id', '=', id)
    .orderBy('at')
    .orderBy('id')
    .execute();
  const versionIds = jobs.flatMap((job) => (job.book_job_version_id === null ? [] : [job.book_job_version_id]));
  const versions =
    versionIds.length === 0
      ? []
      : await tx.selectFrom('book_job_version').selectAll().where('id', 'in', versionIds).execute();
  const findings = await tx.selectFrom('finding').selectAll().where('work_order_id', '=', id).orderBy('at').execute();
  const discounts = await tx
    .selectFrom('sheet_discount')
    .selectAll()
    .where('work_order_id', '=', id)
    .where('taken_out', '=', 0)
    .orderBy('id')
    .execute();
  const tries = await tx.selectFrom('contact_try').selectAll().where('work_order_id', '=', id).orderBy('at').execute();
  const told = await tx
    .selectFrom('message')
    .select(({ fn }) => fn.max('at').as('at'))
    .where('work_order_id', '=', id)
    .where('about', '=', 'found')
    .where('direction', '=', 'out')
    .executeTakeFirst();
  const payments = await tx
    .selectFrom('payment')
    .selectAll()
    .where('work_order_id', '=', id)
    .orderBy('at')
    .orderBy('id')
    .execute();
  const papers = await tx
    .selectFrom('paper')
    .selectAll()
    .where('work_order_id', '=', id)
    .orderBy('issued_at')
    .orderBy('id')
    .execute();
  const sent =
    papers.length === 0
      ? []
      : await tx
          .selectFrom('paper_sent')
          .selectAll()
          .where(
            'paper_id',
            'in',
            papers.map((paper) => paper.id),
          )
          .execute();
  const bookings = await tx
    .selectFrom('booking')
    .innerJoin('bay', 'bay.id', 'booking.bay_id')
    .select(['bay.name as bay', 'day', 'from_time', 'hours', 'no_show_at'])
    .where('work_order_id', '=', id)
    .orderBy('booking.day', 'desc')
    .execute();
  const booking = bookings.find((row) => row.no_show_at === null);
  const moves = await tx
    .selectFrom('part_move')
    .innerJoin('part', 'part.id', 'part_move.part_id')
    .selectAll('part_move')
    .select('part.words')
    .where('job_id', 'in', inJobs)
    .orderBy('part_move.at')
    .execute();
  const awaited = await tx
    .selectFrom('awaited')
    .innerJoin('line', 'line.id', 'awaited.line_id')
    .selectAll('awaited')
    .select('line.words')
    .where('line.job_id', 'in', inJobs)
    .execute();
  const people = new Map(
    (await tx.selectFrom('person').select(['id', 'name', 'pay_rate']).execute()).map((person) => [person.id, person]),
  );
  const last = await tx
    .selectFrom('odometer_reading')
    .selectAll()
    .where('car_id', '=', car.id)
    .orderBy('at', 'desc')
    .orderBy('id', 'desc')
    .limit(1)
    .executeTakeFirst();
  return {
    order,
    customer,
    payer,
    car,
    jobs,
    allJobs,
    lines,
    decisions,
    decided,
    entries,
    running,
    steps,
    touched,
    wrenches,
    quarantines,
    checks,
    versions,
    findings,
    discounts,
    tries,
    /** When the customer was last written or rung about what was found; null: not yet. */
    toldAt: told?.at ?? null,
    payments,
    papers,
    sent,
    booking: booking ?? null,
    /** Where it has no other place, the one that it did not come to. */
    lastPlace: booking ?? bookings[0] ?? null,
    moves,
    awaited,
    people,
    last: last ?? null,
  };
}

export type Loaded = Awaited<ReturnType<typeof loadOrder>>;
