import type { Context } from '../context.ts';
import { notFound } from '../refusal.ts';
import type { KeptSheet } from './issue.ts';
import { carsWithReadings, peopleOfOrders } from './load-people.ts';
import { byOrder, eachOf, padded } from './load-rows.ts';

const PAPER = [
  'id',
  'work_order_id',
  'kind',
  'number',
  'version',
  'issued_at',
  'issued_on',
  'person_id',
  'customer_id',
  'net',
  'tax',
  'gross',
  'due_on',
  'valid_until',
  'corrects',
] as const;

/** Every row that an order is made of, read once; what its papers say word for word aside. Throws not-found. */
export async function loadOrder(context: Context, id: string) {
  const [loaded] = await loadOrders(context, [id]);
  if (!loaded) throw notFound('order', id);
  return loaded;
}

/**
 * Many orders as loadOrder reads one, table by table rather than order by order, in the order of the ids; an id that is no
 * order's is left out.
 */
export async function loadOrders(context: Context, ids: readonly string[]) {
  const found = [];
  for (const some of padded(ids)) found.push(...(await loadSome(context, some)));
  const places = new Map(ids.map((id, place) => [id, place]));
  return found.toSorted((a, b) => (places.get(a.order.id) ?? 0) - (places.get(b.order.id) ?? 0));
}

/** A stretch of orders; ids that are '' are padding and find nothing. */
async function loadSome(context: Context, ids: readonly string[]) {
  const { tx } = context;
  const orders = await tx.selectFrom('work_order').selectAll().where('id', 'in', ids).execute();
  if (orders.length === 0) return [];
  const jobs = await tx.selectFrom('job').selectAll().where('work_order_id', 'in', ids).orderBy('place').execute();
  const orderOf = new Map(jobs.map((job) => [job.id, job.work_order_id]));
  const jobIds = jobs.map((job) => job.id);

  const lines = await eachOf(jobIds, (some) =>
    tx.selectFrom('line').selectAll().where('job_id', 'in', some).where('taken_out', '=', 0).orderBy('place').execute(),
  );
  const entries = await eachOf(jobIds, (some) =>
    tx.selectFrom('clock_entry').selectAll().where('job_id', 'in', some).orderBy('on_at').execute(),
  );
  const running = await tx.selectFrom('clock_open').selectAll().where('job_id', 'is not', null).execute();
  const steps = await eachOf(jobIds, (some) =>
    tx.selectFrom('step_done').selectAll().where('job_id', 'in', some).orderBy('recorded_at').orderBy('id').execute(),
  );
  const touched = await eachOf(jobIds, (some) =>
    tx
      .selectFrom('torque_entry')
      .selectAll()
      .where('job_id', 'in', some)
      .orderBy('recorded_at')
      .orderBy('id')
      .execute(),
  );
  const wrenches = new Map(
    touched.length === 0 && steps.every((row) => row.wrench_id === null)
      ? []
      : (await tx.selectFrom('wrench').select(['id', 'name']).execute()).map((row) => [row.id, row.name]),
  );
  const moves = await eachOf(jobIds, (some) =>
    tx
      .selectFrom('part_move')
      .innerJoin('part', 'part.id', 'part_move.part_id')
      .selectAll('part_move')
      .select('part.words')
      .where('job_id', 'in', some)
      .orderBy('part_move.at')
      .execute(),
  );
  const awaited = await eachOf(jobIds, (some) =>
    tx
      .selectFrom('awaited')
      .innerJoin('line', 'line.id', 'awaited.line_id')
      .selectAll('awaited')
      .select(['line.words', 'line.job_id'])
      .where('line.job_id', 'in', some)
      .execute(),
  );

  const decisions = await tx
    .selectFrom('decision')
    .selectAll()
    .where('work_order_id', 'in', ids)
    .orderBy('number')
    .execute();
  const decided = await tx
    .selectFrom('decision_job')
    .innerJoin('decision', 'decision.id', 'decision_job.decision_id')
    .selectAll('decision_job')
    .select('decision.work_order_id')
    .where('decision.work_order_id', 'in', ids)
    .orderBy('decision.number')
    .execute();
  const quarantines = await tx
    .selectFrom('quarantine')
    .selectAll()
    .where('work_order_id', 'in', ids)
    .orderBy('at')
    .orderBy('id')
    .execute();
  const checks = await tx
    .selectFrom('check_done')
    .select(['check_list_id', 'person_id', 'at', 'work_order_id'])
    .where('work_order_id', 'in', ids)
    .orderBy('at')
    .orderBy('id')
    .execute();
  const versionIds = jobs.flatMap((job) => (job.book_job_version_id === null ? [] : [job.book_job_version_id]));
  const versions = await eachOf([...new Set(versionIds)], (some) =>
    tx.selectFrom('book_job_version').selectAll().where('id', 'in', some).execute(),
  );
  const findings = await tx.selectFrom('finding').selectAll().where('work_order_id', 'in', ids).orderBy('at').execute();
  const discounts = await tx
    .selectFrom('sheet_discount')
    .selectAll()
    .where('work_order_id', 'in', ids)
    .where('taken_out', '=', 0)
    .orderBy('id')
    .execute();
  const tries = await tx
    .selectFrom('contact_try')
    .selectAll()
    .where('work_order_id', 'in', ids)
    .orderBy('at')
    .execute();
  const told = await tx
    .selectFrom('message')
    .select(['work_order_id', 'at'])
    .where('work_order_id', 'in', ids)
    .where('about', '=', 'found')
    .where('direction', '=', 'out')
    .orderBy('at')
    .execute();
  const payments = await tx
    .selectFrom('payment')
    .selectAll()
    .where('work_order_id', 'in', ids)
    .orderBy('at')
    .orderBy('id')
    .execute();
  const papers = await tx
    .selectFrom('paper')
    .select(PAPER)
    .where('work_order_id', 'in', ids)
    .orderBy('issued_at')
    .orderBy('id')
    .execute();
  const invoices = await tx
    .selectFrom('paper')
    .select(['work_order_id', 'sheet'])
    .where('work_order_id', 'in', ids)
    .where('kind', '=', 'invoice')
    .execute();
  const sheets = new Map(invoices.map((row) => [row.work_order_id, JSON.parse(row.sheet) as KeptSheet]));
  const sent = await eachOf(
    papers.map((paper) => paper.id),
    (some) => tx.selectFrom('paper_sent').selectAll().where('paper_id', 'in', some).execute(),
  );
  const bookings = await tx
    .selectFrom('booking')
    .innerJoin('bay', 'bay.id', 'booking.bay_id')
    .select(['bay.name as bay', 'day', 'from_time', 'hours', 'person_id', 'no_show_at', 'work_order_id'])
    .where('work_order_id', 'in', ids)
    .orderBy('booking.day', 'desc')
    .execute();
  const people = new Map(
    (await tx.selectFrom('person').select(['id', 'name', 'pay_rate']).execute()).map((person) => [person.id, person]),
  );
  const customers = await peopleOfOrders(context, orders);
  const cars = await carsWithReadings(context, orders);

  const ofJob = <R extends { readonly job_id: string | null }>(rows: readonly R[]) =>
    byOrder(rows, (row) => orderOf.get(row.job_id ?? '') ?? '');
  const ofOrder = <R extends { readonly work_order_id: string | null }>(rows: readonly R[]) =>
    byOrder(rows, (row) => row.work_order_id ?? '');
  const paperOf = new Map(papers.map((paper) => [paper.id, paper.work_order_id]));
  const at = {
    jobs: ofOrder(jobs),
    lines: ofJob(lines),
    entries: ofJob(entries),
    running: ofJob(running),
    steps: ofJob(steps),
    touched: ofJob(touched),
    moves: ofJob(moves),
    awaited: ofJob(awaited),
    decisions: ofOrder(decisions),
    decided: ofOrder(decided),
    quarantines: ofOrder(quarantines),
    checks: ofOrder(checks),
    findings: ofOrder(findings),
    discounts: ofOrder(discounts),
    tries: ofOrder(tries),
    told: ofOrder(told),
    payments: ofOrder(payments),
    papers: ofOrder(papers),
    sent: byOrder(sent, (row) => paperOf.get(row.paper_id) ?? ''),
    bookings: ofOrder(bookings),
  };
  return orders.map((order) => {
    const { id } = order;
    const allJobs = at.jobs(id);
    const kept = new Set(allJobs.map((job) => job.book_job_version_id));
    const places = at.bookings(id);
    const booking = places.find((row) => row.no_show_at === null);
    return {
      order,
      customer: customers(order.customer_id),
      payer: order.payer_id === null ? null : customers(order.payer_id),
      ...cars(order.car_id),
      jobs: allJobs.filter((job) => job.taken_out === 0 && job.moved_to === null),
      allJobs,
      lines: at.lines(id),
      decisions: at.decisions(id),
      decided: at.decided(id),
      entries: at.entries(id),
      running: at.running(id),
      steps: at.steps(id),
      touched: at.touched(id),
      wrenches,
      quarantines: at.quarantines(id),
      checks: at.checks(id),
      versions: versions.filter((version) => kept.has(version.id)),
      findings: at.findings(id),
      discounts: at.discounts(id),
      tries: at.tries(id),
      /** When the customer was last written or rung about what was found; null: not yet. */
      toldAt: at.told(id).at(-1)?.at ?? null,
      payments: at.payments(id),
      papers: at.papers(id),
      /** What its invoice was reckoned from; null while there is none. */
      invoiced: sheets.get(id) ?? null,
      sent: at.sent(id),
      booking: booking ?? null,
      /** Where it has no other place, the one that it did not come to. */
      lastPlace: booking ?? places[0] ?? null,
      moves: at.moves(id),
      awaited: at.awaited(id),
      people,
    };
  });
}

export type Loaded = Awaited<ReturnType<typeof loadOrder>>;
