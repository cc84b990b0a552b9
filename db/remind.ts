import { ahead } from '../core/car/reminder.ts';
import { REMINDER_WORDS } from '../core/paper/message-words.ts';
import { addMonths } from '../core/time/civil.ts';
import type { Context } from './context.ts';
import { newId } from './id.ts';
import { clockAfter, dueAfter } from './order/due-after.ts';
import type { Loaded } from './order/load.ts';
import type { Reckoned } from './order/reckon.ts';
import { settingsOf, signedIn } from './people.ts';
import { readingsOf } from './reminders.ts';
import type { ReminderRow } from './tables.ts';

interface ToRemind extends Pick<ReminderRow, 'car_id' | 'source' | 'source_id' | 'words' | 'due_on'> {
  /** What the car's clock will show, its own unit. */
  readonly shows: number | null;
}

/** The day on which a reminder is to be looked at: due by its date, or by the pace of the visits. */
async function lookOn(
  context: Context,
  carId: string,
  rule: { readonly onDate: string | null; readonly atDistance: number | null },
): Promise<string | null> {
  if (rule.atDistance === null) return rule.onDate;
  const car = await context.tx.selectFrom('car').select('unit').where('id', '=', carId).executeTakeFirstOrThrow();
  const { all } = await readingsOf(context, carId);
  return ahead(all, rule, car.unit, context.today).on;
}

/** After a reading: the car's open reminders of a distance get the day that the new pace says. */
export async function lookAgain(context: Context, carId: string): Promise<void> {
  const open = await context.tx
    .selectFrom('reminder')
    .select(['id', 'due_on', 'due_mileage', 'look_on'])
    .where('car_id', '=', carId)
    .where('closed_at', 'is', null)
    .where('due_mileage', 'is not', null)
    .execute();
  for (const row of open) {
    const day = await lookOn(context, carId, { onDate: row.due_on, atDistance: row.due_mileage });
    if (day !== row.look_on) await context.write.update('reminder', row.id, { look_on: day });
  }
}

/** Writes a reminder down, with the true distance. One of the same source that is still open takes the new day and distance. */
export async function remind(context: Context, { shows, ...row }: ToRemind): Promise<string> {
  const { tx, write } = context;
  const { carried } = await readingsOf(context, row.car_id);
  const distance = shows === null ? null : shows + carried;
  const due = {
    ...{ due_on: row.due_on, due_mileage: distance },
    look_on: await lookOn(context, row.car_id, { onDate: row.due_on, atDistance: distance }),
  };
  const same =
    row.source_id === null
      ? undefined
      : await tx
          .selectFrom('reminder')
          .selectAll()
          .where('source', '=', row.source)
          .where('source_id', '=', row.source_id)
          .executeTakeFirst();
  if (same) {
    if (same.closed_at === null)
      await write.update('reminder', same.id, { ...due, words: row.words, revision: same.revision + 1 });
    return same.id;
  }
  // What is done again ends what was waited for: the old service, the old wheels.
  if (row.source_id !== null && row.source !== 'declined' && row.source !== 'warranty') await doneAgain(context, row);
  const id = newId();
  await write.insert('reminder', {
    ...{ id, revision: 1, ...row, ...due, made_at: context.now, made_by: signedIn(context).id },
    ...{ closed_at: null, close_why: '' },
  });
  return id;
}

/** Closes what is open of the same car under the same words. */
async function doneAgain(
  context: Context,
  { car_id, source, words }: Pick<ReminderRow, 'car_id' | 'source' | 'words'>,
) {
  const open = await context.tx
    .selectFrom('reminder')
    .select(['id', 'revision'])
    .where('car_id', '=', car_id)
    .where('source', '=', source)
    .where('words', '=', words)
    .where('closed_at', 'is', null)
    .execute();
  for (const row of open)
    await context.write.update('reminder', row.id, {
      ...{ closed_at: context.now, close_why: 'done-again', revision: row.revision + 1 },
    });
}

/** Declined work comes up again; what was said yes to after all does not. `again` null: it was a yes. */
export async function remindOfDeclined(
  context: Context,
  loaded: Loaded,
  jobId: string,
  again: { readonly on: string; readonly distance: number | null } | null,
): Promise<void> {
  if (loaded.order.counter_sale === 1) return;
  const { tx, write } = context;
  if (again) {
    const words = loaded.jobs.find((job) => job.id === jobId)?.title ?? '';
    await remind(context, {
      ...{ car_id: loaded.car.id, source: 'declined', source_id: jobId, words },
      ...{ due_on: again.on, shows: again.distance },
    });
    return;
  }
  const open = await tx
    .selectFrom('reminder')
    .select(['id', 'revision'])
    .where('source', '=', 'declined')
    .where('source_id', '=', jobId)
    .where('closed_at', 'is', null)
    .executeTakeFirst();
  if (open)
    await write.update('reminder', open.id, {
      ...{ closed_at: context.now, close_why: 'said-yes', revision: open.revision + 1 },
    });
}

/**
 * What an invoiced order leaves to come: what the job book says is due after its jobs, wheels to tighten again where a
 * step hands out the card, and the end of the warranty. A paid order does not end these.
 */
export async function remindAfterInvoice(
  context: Context,
  loaded: Loaded,
  reckoned: Reckoned,
  invoicePaperId: string,
): Promise<void> {
  // A sale without a car leaves nothing to come, and neither does a fee for storage.
  if (loaded.order.counter_sale === 1 || loaded.order.storage_of !== null) return;
  const settings = settingsOf(context);
  const { order, car } = loaded;
  const words = REMINDER_WORDS[settings.language];
  const bare = { car_id: car.id };
  for (const due of dueAfter(loaded, reckoned, settings, context.today))
    await remind(context, {
      ...{ ...bare, source: due.source, source_id: due.sourceId, words: due.words },
      ...{ due_on: due.on, shows: due.shows },
    });
  const terms = settings.warrantyTerms;
  if (terms)
    await remind(context, {
      ...{ ...bare, source: 'warranty', source_id: invoicePaperId, words: words.warranty(order.number) },
      ...{ due_on: addMonths(context.today, terms.months), shows: clockAfter(loaded, settings, terms.distance) },
    });
}
