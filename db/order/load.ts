import type { Context } from '../context.ts';
import { notFound } from '../refusal.ts';
import type { KeptSheet } from './issue.ts';
import { carsWithReadings, peopleOfOrders } from './load-people.ts';
import * as questions from './load-questions.ts';
import { byOrder, eachOf, padded } from './load-rows.ts';

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
  const orders = await questions.orders(tx, { ids });
  if (orders.length === 0) return [];
  const jobs = await questions.jobs(tx, { ids });
  const orderOf = new Map(jobs.map((job) => [job.id, job.work_order_id]));
  const jobIds = jobs.map((job) => job.id);

  const lines = await eachOf(jobIds, (ids) => questions.lines(tx, { ids }));
  const entries = await eachOf(jobIds, (ids) => questions.clockEntries(tx, { ids }));
  const running = await questions.clocksRunning(tx, {});
  const steps = await eachOf(jobIds, (ids) => questions.stepsDone(tx, { ids }));
  const touched = await eachOf(jobIds, (ids) => questions.torqueEntries(tx, { ids }));
  const wrenches = new Map(
    touched.length === 0 && steps.every((row) => row.wrench_id === null)
      ? []
      : (await questions.wrenches(tx, {})).map((row) => [row.id, row.name]),
  );
  const moves = await eachOf(jobIds, (ids) => questions.partMoves(tx, { ids }));
  const awaited = await eachOf(jobIds, (ids) => questions.awaited(tx, { ids }));

  const decisions = await questions.decisions(tx, { ids });
  const decided = await questions.decidedJobs(tx, { ids });
  const quarantines = await questions.quarantines(tx, { ids });
  const checks = await questions.checksDone(tx, { ids });
  const versionIds = jobs.flatMap((job) => (job.book_job_version_id === null ? [] : [job.book_job_version_id]));
  const versions = await eachOf([...new Set(versionIds)], (ids) => questions.bookVersions(tx, { ids }));
  const findings = await questions.findings(tx, { ids });
  const discounts = await questions.discounts(tx, { ids });
  const tries = await questions.contactTries(tx, { ids });
  const told = await questions.toldOfFindings(tx, { ids });
  const payments = await questions.payments(tx, { ids });
  const papers = await questions.papers(tx, { ids });
  // By their ids: asked for by kind, the database would go through every invoice there is.
  const invoiceIds = papers.flatMap((paper) => (paper.kind === 'invoice' ? [paper.id] : []));
  const invoices = await eachOf(invoiceIds, (ids) => questions.sheets(tx, { ids }));
  const sheets = new Map(invoices.map((row) => [row.work_order_id, JSON.parse(row.sheet) as KeptSheet]));
  const sent = await eachOf(
    papers.map((paper) => paper.id),
    (ids) => questions.papersSent(tx, { ids }),
  );
  const bookings = await questions.bookings(tx, { ids });
  const people = new Map((await questions.people(tx, {})).map((person) => [person.id, person]));
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
