import type { CopyData } from '../core/customer/copy-text.ts';
import { instantToWall } from '../core/time/instant.ts';
import { consentsOf } from './consents.ts';
import type { Context } from './context.ts';
import { settingsOf } from './people.ts';
import type { CustomerRow } from './tables.ts';

/** Entries that were joined into a customer are the same person: everything is asked of all of them. */
export async function entriesOf({ tx }: Context, customerId: string): Promise<CustomerRow[]> {
  return tx
    .selectFrom('customer')
    .selectAll()
    .where((on) => on.or([on('id', '=', customerId), on('joined_into', '=', customerId)]))
    .orderBy('made_at')
    .execute();
}

/** Everything that is kept about a customer, part by part, sums in whole and minor units as the shop writes them. */
export async function copyOf(context: Context, entries: readonly CustomerRow[]): Promise<CopyData> {
  const { tx } = context;
  const { zone, currency } = settingsOf(context);
  const ids = entries.map((row) => row.id);
  const when = (at: number | null) => {
    if (at === null) return null;
    const { date, time } = instantToWall(at, zone);
    return `${date} ${time}`;
  };
  const cars = await tx
    .selectFrom('car_owner')
    .innerJoin('car', 'car.id', 'car_owner.car_id')
    .select(['car.plate', 'car.vin', 'car.words', 'car_owner.from_day', 'car_owner.to_day'])
    .where('customer_id', 'in', ids)
    .orderBy('from_day')
    .execute();
  const orders = await tx
    .selectFrom('work_order')
    .selectAll()
    .where((on) => on.or([on('customer_id', 'in', ids), on('payer_id', 'in', ids)]))
    .orderBy('opened_at')
    .execute();
  const orderIds = orders.length === 0 ? [''] : orders.map((row) => row.id);
  const number = new Map(orders.map((row) => [row.id, row.number]));
  const said = await tx
    .selectFrom('decision')
    .selectAll()
    .where('work_order_id', 'in', orderIds)
    .orderBy('at')
    .execute();
  const papers = await tx
    .selectFrom('paper')
    .selectAll()
    .where('customer_id', 'in', ids)
    .orderBy('issued_at')
    .execute();
  const paid = await tx
    .selectFrom('payment')
    .selectAll()
    .where('work_order_id', 'in', orderIds)
    .orderBy('at')
    .execute();
  const tries = await tx
    .selectFrom('contact_try')
    .selectAll()
    .where('work_order_id', 'in', orderIds)
    .orderBy('at')
    .execute();
  const messages = await tx.selectFrom('message').selectAll().where('customer_id', 'in', ids).orderBy('at').execute();
  const reminders = await remindersOf(context, ids);
  const keys = await tx
    .selectFrom('key_out')
    .selectAll()
    .where('work_order_id', 'in', orderIds)
    .orderBy('at')
    .execute();
  const photos = await tx
    .selectFrom('photo')
    .select(['at', 'work_order_id'])
    .where('work_order_id', 'in', orderIds)
    .execute();
  const asked = await tx.selectFrom('privacy_request').selectAll().where('customer_id', 'in', ids).execute();
  const statements = await tx
    .selectFrom('statement')
    .leftJoin('statement_sent', 'statement_sent.statement_id', 'statement.id')
    .select(['statement.at', 'from_day', 'until_day', 'closing', 'statement_sent.at as sentAt', 'how'])
    .where('customer_id', 'in', ids)
    .orderBy('statement.at')
    .execute();
  const agreed = await consentsOf(context, ids);
  const sums = { 'sums are in': `the smallest coin of ${currency}` };
  return {
    'the entry': entries.map((row) => ({
      ...{ name: row.name, phone: row.phone, 'other phone': row.phone2, email: row.email },
      ...{ address: (JSON.parse(row.address) as string[]).join(', '), 'told by': row.tell_by, note: row.note },
      ...{ 'tax number': row.tax_number, 'bears no tax, because': row.tax_exempt, language: row.language },
      ...{ 'may owe up to': row.credit_limit, 'agreed to': row.consents, 'known since': when(row.made_at) },
    })),
    'who may say yes for them': entries.flatMap((row) =>
      (JSON.parse(row.may_yes) as { name: string; upTo: number | null }[]).map((one) => ({
        ...{ name: one.name, 'up to': one.upTo ?? 'any sum' },
      })),
    ),
    cars: cars.map((row) => ({
      ...{ plate: row.plate, vin: row.vin, car: row.words, from: row.from_day, to: row.to_day },
    })),
    orders: orders.map((row) => ({
      ...{ order: row.number, opened: when(row.opened_at), 'what was said': row.complaint },
      ...{ 'when it happens': (JSON.parse(row.when_it_happens) as string[]).join(', '), 'at the door': row.door },
      ...{ 'mileage in': row.mileage_in, 'mileage out': row.mileage_out, 'handed over to': row.handed_over_to },
      ...{ 'called off': when(row.cancelled_at), 'because of': row.cancel_why, 'own order number': row.po_number },
    })),
    'yes and no': said.map((row) => ({
      ...{ order: number.get(row.work_order_id) ?? 0, at: when(row.at), who: row.spoken_name, way: row.way },
      ...{ reached: row.reached, words: row.words, 'up to': row.ceiling, signed: row.strokes !== null },
    })),
    papers: papers.map((row) => ({
      ...{ paper: row.kind, number: row.number, day: row.issued_on, total: row.gross, ...sums },
    })),
    payments: paid.map((row) => ({
      ...{ order: number.get(row.work_order_id) ?? 0, at: when(row.at), what: row.kind, way: row.way },
      ...{ sum: row.amount, note: row.note, ...sums },
    })),
    'calls and messages': [
      ...messages.map((row) => ({
        ...{ at: when(row.at), way: row.way, from: row.direction === 'in' ? 'them' : 'us', words: row.words },
      })),
      ...tries.map((row) => ({ at: when(row.at), way: row.way, reached: row.reached, words: row.words })),
      ...reminders.map((row) => ({ at: when(row.at), way: 'reminder', reached: row.outcome, words: row.words })),
    ],
    'statements of account': statements.map((row) => ({
      ...{ made: when(row.at), from: row.from_day, until: row.until_day, owed: row.closing, sent: when(row.sentAt) },
      ...{ how: row.how, ...sums },
    })),
    'what they agreed to': agreed.map(({ what, answer, way, on, at }) => ({
      ...{ day: on, what, answer, how: way, 'written down': when(at) },
    })),
    'keys handed out': keys.map((row) => ({ at: when(row.at), to: row.to_whom, words: row.words })),
    photos: photos.map((row) => ({ at: when(row.at), order: number.get(row.work_order_id) ?? 0 })),
    'what they asked about themselves': asked.map((row) => ({
      ...{ day: row.asked_on, way: row.way, words: row.words, answered: when(row.answered_at), answer: row.answer },
    })),
  };
}

/** What came of asking about what is due, of the cars that are theirs, while they were. */
export async function remindersOf({ tx }: Context, ids: readonly string[]) {
  return tx
    .selectFrom('car_owner')
    .innerJoin('reminder', 'reminder.car_id', 'car_owner.car_id')
    .innerJoin('reminder_try', 'reminder_try.reminder_id', 'reminder.id')
    .selectAll('reminder_try')
    .where('car_owner.customer_id', 'in', ids)
    .where('car_owner.to_day', 'is', null)
    .orderBy('reminder_try.at')
    .execute();
}
