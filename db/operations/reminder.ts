import type { OutputOf } from '../../core/contract/index.ts';
import { answersOf } from '../answers.ts';
import type { Context, Handlers } from '../context.ts';
import { newId } from '../id.ts';
import { letterPdfOf } from '../letter.ts';
import { signedIn } from '../people.ts';
import { badInput, notFound } from '../refusal.ts';
import { remind } from '../remind.ts';
import { aheadOf, dueReminders, isDue, reminderRow, standsBy, triesOf } from '../reminders.ts';
import type { ReminderRow } from '../tables.ts';
import { draftMessage } from './message.ts';

type Hours = Awaited<ReturnType<typeof answersOf>>;
type Shown = OutputOf<'reminder.list'>['rows'][number];

async function amountOf(context: Context, row: ReminderRow): Promise<number | null> {
  if (row.source !== 'declined' || row.source_id === null || !context.seesPrices) return null;
  const last = await context.tx
    .selectFrom('decision_job')
    .innerJoin('decision', 'decision.id', 'decision_job.decision_id')
    .select('decision_job.amount')
    .where('decision_job.job_id', '=', row.source_id)
    .orderBy('decision.at', 'desc')
    .executeTakeFirst();
  return last?.amount ?? null;
}

/** A reminder as it is shown. */
async function shown(context: Context, row: ReminderRow, until: string, hours: Hours): Promise<Shown> {
  const { ahead, car, customer } = await aheadOf(context, row);
  const tries = await triesOf(context, row.id);
  const stands = standsBy(context, tries);
  return {
    ...{ id: row.id, revision: row.revision, source: row.source, words: row.words },
    ...{ carId: car.id, plate: car.plate, car: car.words, unit: car.unit },
    customer: customer && {
      ...{ id: customer.id, name: customer.name, phone: customer.phone, phone2: customer.phone2 },
      ...{ email: customer.email, tellBy: customer.tell_by, bestPhone: hours.get(customer.id)?.bestPhone ?? null },
    },
    ...{ dueOn: row.due_on, dueMileage: ahead.shownDue, on: ahead.on, guessed: ahead.guessed },
    ...{ days: ahead.days, perDayX100: ahead.perDayX100, expected: ahead.shownExpected },
    due: row.closed_at === null && isDue(context, row, stands, until),
    ...{ askOn: stands.askOn, noes: stands.noes },
    tries: tries.map((one) => ({ at: one.at, outcome: one.outcome, askOn: one.ask_on, words: one.words, by: one.by })),
    amount: await amountOf(context, row),
    ...{ closedAt: row.closed_at, closeWhy: row.close_why },
  };
}

/** Many of them; when their owners answer is asked once. */
async function allShown(context: Context, rows: readonly ReminderRow[], until: string): Promise<Shown[]> {
  const carIds = [...new Set(rows.map((row) => row.car_id))];
  const owners =
    carIds.length === 0
      ? []
      : await context.tx
          .selectFrom('car_owner')
          .select('customer_id')
          .distinct()
          .where('car_id', 'in', carIds)
          .where('to_day', 'is', null)
          .execute();
  const hours = await answersOf(
    context,
    owners.map((row) => row.customer_id),
  );
  const all = [];
  for (const row of rows) all.push(await shown(context, row, until, hours));
  return all;
}

const openRow = async (context: Context, id: string) => {
  const row = await reminderRow(context, id);
  if (row.closed_at !== null) throw badInput('id', 'closed-already');
  return row;
};

const seen = (row: ReminderRow) => ({ words: row.words, closedAt: row.closed_at, closeWhy: row.close_why });

export const reminderHandlers: Handlers = {
  'reminder.add': async ({ carId, source, words, dueOn, dueMileage }, context) => {
    const car = await context.tx.selectFrom('car').select('id').where('id', '=', carId).executeTakeFirst();
    if (!car) throw notFound('car', carId);
    const id = await remind(context, {
      ...{ car_id: carId, source, source_id: null, words, due_on: dueOn, shows: dueMileage },
    });
    return { id, revision: 1 };
  },
  'reminder.list': async ({ until, carId, most }, context) => {
    const day = until ?? context.today;
    if (carId === null) {
      const due = (await dueReminders(context, day)).slice(0, most);
      return { rows: await allShown(context, due, day) };
    }
    const all = await context.tx
      .selectFrom('reminder')
      .selectAll()
      .where('car_id', '=', carId)
      .orderBy('made_at', 'desc')
      .limit(most)
      .execute();
    return { rows: await allShown(context, all, day) };
  },
  'reminder.try': async ({ id, revision, outcome, askOn, words }, context) => {
    await openRow(context, id);
    if (askOn !== null && askOn < context.today) throw badInput('askOn', 'in-the-past');
    const next = await context.write.edit('reminder', id, revision, {}, { outcome }, seen);
    await context.write.insert('reminder_try', {
      ...{ id: newId(), reminder_id: id, outcome, ask_on: askOn, words },
      ...{ person_id: signedIn(context).id, at: context.now },
    });
    const { over } = standsBy(context, await triesOf(context, id));
    if (over !== '') await context.write.update('reminder', id, { closed_at: context.now, close_why: over });
    return { id, revision: next, closed: over !== '' };
  },
  'reminder.close': async ({ id, revision, why }, context) => {
    await openRow(context, id);
    const patch = { closed_at: context.now, close_why: why };
    return { id, revision: await context.write.edit('reminder', id, revision, patch, { why }, seen) };
  },
  'reminder.letter': async ({ id }, context) => {
    const { customer, language, subject, text } = await draftMessage(context, 'reminder', {
      ...{ orderId: null, reminderId: id },
    });
    const bytes = await letterPdfOf(context, { customer, language, subject, text });
    return { name: `${subject.replace(/[^\p{L}\p{N} ,.-]/gu, '')}.pdf`, base64: Buffer.from(bytes).toString('base64') };
  },
};
