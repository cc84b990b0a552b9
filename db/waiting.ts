import { minutesLeft, type WorkingHours, workEnds } from '../core/order/expected.ts';
import { addDays } from '../core/time/civil.ts';
import { civilDateOf, instantToWall } from '../core/time/instant.ts';
import type { Context } from './context.ts';
import { countUnsent } from './operations/paper-lists.ts';
import type { Loaded } from './order/load.ts';
import { countedMinutes, type Reckoned } from './order/reckon.ts';
import { settingsOf } from './people.ts';
import { dueReminders } from './reminders.ts';

const MINUTE = 60_000;

function hoursOf(context: Context): WorkingHours {
  const { planOpens, planCloses, workingWeekdays, zone } = settingsOf(context);
  return { opens: planOpens, closes: planCloses, weekdays: workingWeekdays, zone };
}

/** Minutes clocked on a job, with the clocks that run now. */
const clockedSoFar = (context: Context, loaded: Loaded, jobId: string) =>
  loaded.running
    .filter((clock) => clock.job_id === jobId && clock.kind === 'work')
    .reduce(
      (minutes, clock) => minutes + Math.floor((context.now - clock.on_at) / MINUTE),
      countedMinutes(loaded.entries, jobId),
    );

/**
 * When the work of an order that was said yes to will be done at the earliest, against its promise: it is told before it
 * is late. null for a car that is not here, is invoiced or gone, and where no hours are sold or none are left.
 */
export function expectedOf(context: Context, loaded: Loaded, reckoned: Reckoned) {
  const { order } = loaded;
  const over =
    order.arrived_at === null ||
    order.handed_over_at !== null ||
    order.cancelled_at !== null ||
    loaded.papers.some((paper) => paper.kind === 'invoice');
  if (over) return null;
  const sold = new Map<string, number>();
  for (const job of reckoned.sheet.jobs) {
    if (!reckoned.yes.covered.has(job.id)) continue;
    const hours = job.lines.filter((line) => line.kind === 'labour').reduce((sum, line) => sum + line.quantity, 0);
    sold.set(job.id, hours);
  }
  const left = minutesLeft(
    [...sold].map(([jobId, hours]) => ({ sold: hours, clocked: clockedSoFar(context, loaded, jobId) })),
  );
  if (left === 0) return null;
  const doneAt = workEnds(context.now, left, hoursOf(context));
  return { doneAt, leftMinutes: left, late: order.promise_at !== null && doneAt > order.promise_at };
}

/** Whether a clock was surely left running: since another day, or after the garage closed today. */
export function leftRunning(context: Context, on: number): boolean {
  const { planCloses, zone } = settingsOf(context);
  const now = instantToWall(context.now, zone);
  const began = instantToWall(on, zone);
  return began.date < now.date || (now.time > planCloses && began.time < planCloses);
}

/** Samples that a lab has and has not answered in time. */
async function labOverdue(context: Context) {
  const rows = await context.tx
    .selectFrom('fluid_sample')
    .innerJoin('work_order', 'work_order.id', 'fluid_sample.work_order_id')
    .select(['fluid_sample.id', 'work_order_id', 'number', 'label', 'lab', 'sent_on'])
    .where('sent_on', 'is not', null)
    .where('sent_on', '<', addDays(context.today, -settingsOf(context).labDays))
    .where('result_on', 'is', null)
    .orderBy('sent_on')
    .execute();
  return rows.map((row) => ({
    ...{ sampleId: row.id, orderId: row.work_order_id, number: row.number, label: row.label, lab: row.lab },
    sentOn: row.sent_on ?? '',
  }));
}

/** How far back an old unit is looked for; what has not come back by then does not. */
const CORE_DAYS = 400;
const DAY = 86_400_000;

/** Lines that credit notes gave back of these invoices. */
async function creditedLines(context: Context, invoiceIds: readonly string[]): Promise<Set<string>> {
  if (invoiceIds.length === 0) return new Set();
  const notes = await context.tx.selectFrom('paper').select('sheet').where('corrects', 'in', invoiceIds).execute();
  return new Set(
    notes.flatMap(({ sheet }) =>
      ((JSON.parse(sheet) as { credited?: { lineId: string }[] }).credited ?? []).map((one) => one.lineId),
    ),
  );
}

/** Core charges that were invoiced, not credited, and whose old unit should be back. */
async function coresOverdue(context: Context) {
  const { coreDays, zone } = settingsOf(context);
  const rows = await context.tx
    .selectFrom('paper')
    .innerJoin('work_order', 'work_order.id', 'paper.work_order_id')
    .innerJoin('customer', 'customer.id', 'paper.customer_id')
    .innerJoin('job', 'job.work_order_id', 'work_order.id')
    .innerJoin('line', 'line.job_id', 'job.id')
    .select(['line.id', 'line.words', 'work_order.id as orderId', 'work_order.number', 'customer.name'])
    .select(['paper.issued_at', 'paper.id as paperId', 'paper.kind'])
    .where('paper.issued_at', '>', context.now - CORE_DAYS * DAY)
    .where('line.kind', '=', 'core')
    .where('line.taken_out', '=', 0)
    .where('line.unit_price', '>', 0)
    .where('job.taken_out', '=', 0)
    .orderBy('paper.issued_at')
    .execute();
  // The kind is looked at here: asked for, it would lead the database through all papers of the kind.
  const overdue = rows
    .filter(({ kind }) => kind === 'invoice')
    .map((row) => ({ row, dueOn: addDays(civilDateOf(row.issued_at, zone), coreDays) }))
    .filter(({ dueOn }) => dueOn < context.today);
  const credited = await creditedLines(context, [...new Set(overdue.map(({ row }) => row.paperId))]);
  return overdue
    .filter(({ row }) => !credited.has(row.id))
    .map(({ row, dueOn }) => ({
      ...{ lineId: row.id, orderId: row.orderId, number: row.number, words: row.words, customer: row.name, dueOn },
    }));
}

/** What else waits for somebody at the desk; a mechanic is told nothing of customers and papers. */
export async function waitingOf(context: Context) {
  if (context.who?.role === 'mechanic') return { toSend: 0, lab: await labOverdue(context), cores: [], reminders: 0 };
  return {
    toSend: await countUnsent(context),
    lab: await labOverdue(context),
    cores: await coresOverdue(context),
    reminders: (await dueReminders(context, context.today)).length,
  };
}
