import { manMinutesLeft, minutesByTheClock, type WorkingHours, workEnds } from '../core/order/expected.ts';
import { storageDays } from '../core/order/storage.ts';
import { addDays } from '../core/time/civil.ts';
import { civilDateOf, instantToWall } from '../core/time/instant.ts';
import type { Context } from './context.ts';
import { countUnsent } from './operations/paper-lists.ts';
import { statementsToSend } from './operations/statement-run.ts';
import type { Loaded } from './order/load.ts';
import { oldUnitsOut } from './order/old-units.ts';
import { countedMinutes, type Reckoned } from './order/reckon.ts';
import { storageOf } from './order/storage.ts';
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
 * Who is on a job: whoever is clocked on to it, else whom its labour was given to, else who is to do the order. Whoever is
 * away today leaves it to the others, and to anybody where there are none.
 */
function handsOn(loaded: Loaded, jobId: string, away: ReadonlySet<string>): string[] {
  const on = loaded.running.filter((clock) => clock.job_id === jobId && clock.kind === 'work');
  if (on.length > 0) return on.map((clock) => clock.person_id);
  const given = loaded.lines
    .filter((line) => line.job_id === jobId && line.kind === 'labour')
    .flatMap((line) => (JSON.parse(line.people) as { personId: string }[]).map(({ personId }) => personId));
  const meant = given.length > 0 ? given : loaded.booking?.person_id ? [loaded.booking.person_id] : [];
  return [...new Set(meant)].filter((person) => !away.has(person));
}

/**
 * When the work of an order that was said yes to will be done at the earliest, against its promise: it is told before it
 * is late. null for a car that is not here, is invoiced or gone, and where no hours are sold or none are left.
 */
export function expectedOf(context: Context, loaded: Loaded, reckoned: Reckoned, away: ReadonlySet<string>) {
  const { order } = loaded;
  const over =
    order.arrived_at === null ||
    order.handed_over_at !== null ||
    order.cancelled_at !== null ||
    loaded.papers.some((paper) => paper.kind === 'invoice');
  if (over) return null;
  const jobs = reckoned.sheet.jobs
    .filter((job) => reckoned.yes.covered.has(job.id))
    .map((job) => {
      const sold = job.lines.filter((line) => line.kind === 'labour').reduce((sum, line) => sum + line.quantity, 0);
      const clocked = clockedSoFar(context, loaded, job.id);
      return { minutes: manMinutesLeft({ sold, clocked }), people: handsOn(loaded, job.id, away) };
    })
    .filter(({ minutes }) => minutes > 0);
  const left = jobs.reduce((sum, { minutes }) => sum + minutes, 0);
  if (left === 0) return null;
  const hands = new Set(jobs.flatMap(({ people }) => people)).size;
  const doneAt = workEnds(context.now, minutesByTheClock(jobs), hoursOf(context));
  const late = order.promise_at !== null && doneAt > order.promise_at;
  return { doneAt, leftMinutes: left, people: Math.max(1, hands), late };
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

/** Core charges that were invoiced, not credited, and whose old unit should be back. */
async function coresOverdue(context: Context) {
  const { coreDays, zone } = settingsOf(context);
  return (await oldUnitsOut(context))
    .map((row) => ({ row, dueOn: addDays(civilDateOf(row.issued_at, zone), coreDays) }))
    .filter(({ dueOn }) => dueOn < context.today)
    .map(({ row, dueOn }) => ({
      ...{ lineId: row.id, orderId: row.orderId, number: row.number, words: row.words, customer: row.name, dueOn },
    }));
}

/** Working days after which a car that is ready counts as not fetched where no other were agreed: common practice, no source. */
const PATIENCE = 3;

/** Cars that stand here ready longer than they do for nothing: told so, not fetched. With what it costs where that was agreed. */
async function notFetched(context: Context) {
  const orders = await context.tx
    .selectFrom('work_order')
    .innerJoin('car', 'car.id', 'work_order.car_id')
    .innerJoin('customer', 'customer.id', 'work_order.customer_id')
    .selectAll('work_order')
    .select(['car.plate', 'car.words', 'customer.name'])
    .where('handed_over_at', 'is', null)
    .where('cancelled_at', 'is', null)
    .where((on) =>
      on.exists(
        on
          .selectFrom('message')
          .select('message.id')
          .whereRef('message.work_order_id', '=', 'work_order.id')
          .where('about', '=', 'ready'),
      ),
    )
    .orderBy('opened_at')
    .execute();
  const rows = [];
  for (const order of orders) {
    const { notice, days, daysInAll, gross, told } = await storageOf(context, order, null);
    if (notice === null) continue;
    const over = told
      ? daysInAll > 0
      : storageDays(notice, context.today, { ...workingOf(context), freeWorkingDays: PATIENCE }).days > 0;
    if (!over) continue;
    rows.push({
      ...{ orderId: order.id, number: order.number, car: order.plate || order.words, customer: order.name },
      ...{ notice, gross: told && days > 0 && context.seesPrices ? gross : null },
    });
  }
  return rows;
}

function workingOf(context: Context) {
  const { workingWeekdays } = settingsOf(context);
  // Without a working day every day is one.
  return {
    workingWeekdays: workingWeekdays.length === 0 ? [1, 2, 3, 4, 5, 6, 7] : workingWeekdays,
    collectionDayCharged: true,
  };
}

/** Requests about somebody's own data without an answer, the earliest last day first. */
async function privacyWaiting({ tx, today }: Context) {
  const rows = await tx
    .selectFrom('privacy_request')
    .innerJoin('customer', 'customer.id', 'privacy_request.customer_id')
    .select(['privacy_request.id', 'customer_id', 'customer.name', 'answer_by'])
    .where('answered_at', 'is', null)
    .orderBy('answer_by')
    .execute();
  return rows.map((row) => ({
    ...{ id: row.id, customerId: row.customer_id, customer: row.name, answerBy: row.answer_by },
    late: row.answer_by < today,
  }));
}

/** What else waits for somebody at the desk; a mechanic is told nothing of customers and papers. */
export async function waitingOf(context: Context) {
  if (context.who?.role === 'mechanic')
    return {
      ...{ toSend: 0, statements: null, lab: await labOverdue(context) },
      ...{ cores: [], stored: [], reminders: 0, privacy: [] },
    };
  return {
    toSend: await countUnsent(context),
    statements: await statementsToSend(context),
    lab: await labOverdue(context),
    cores: await coresOverdue(context),
    stored: await notFetched(context),
    reminders: (await dueReminders(context, context.today)).length,
    privacy: await privacyWaiting(context),
  };
}
