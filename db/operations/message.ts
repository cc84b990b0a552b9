import { amountText, wholeText } from '../../core/paper/figures.ts';
import { type MessageFigures, writeMessage } from '../../core/paper/message.ts';
import { paperWords } from '../../core/paper/words.ts';
import { civilDateOf, instantToWall } from '../../core/time/instant.ts';
import { accountIds } from '../books/account.ts';
import type { Context, Handlers, Settings } from '../context.ts';
import { newId } from '../id.ts';
import { currencyOf } from '../order/document.ts';
import { loadOrder } from '../order/load.ts';
import { balanceOf, letterOf, reckonOrder } from '../order/reckon.ts';
import { settingsOf, signedIn } from '../people.ts';
import { badInput, notFound } from '../refusal.ts';
import { aheadOf, reminderRow } from '../reminders.ts';
import type { CustomerRow } from '../tables.ts';

type Language = 'en' | 'de';

/** How a message writes sums, dates and distances. */
function writing(settings: Settings, language: Language) {
  const currency = currencyOf(settings);
  const date = (day: string | null) => (day === null ? '' : paperWords(language, settings.dateForm).date(day, false));
  return {
    sum: (minor: number) => `${amountText(minor, currency)} ${settings.currency}`,
    date,
    moment: (at: number | null) => {
      if (at === null) return '';
      const wall = instantToWall(at, settings.zone);
      return `${date(wall.date)}, ${wall.time}`;
    },
    distance: (distance: number | null, unit: string) =>
      distance === null ? '' : `${wholeText(distance, currency)} ${unit}`,
  };
}

const ofShop = (settings: Settings): MessageFigures => ({
  garage: settings.name,
  phone: settings.phone,
  opens: settings.planOpens,
  closes: settings.planCloses,
});

async function ofOrder(context: Context, orderId: string, languageOf: (customer: CustomerRow) => Language) {
  const settings = settingsOf(context);
  const loaded = await loadOrder(context, orderId);
  const reckoned = reckonOrder(loaded, settings);
  const { order, customer, car } = loaded;
  const write = writing(settings, languageOf(customer));
  const invoice = loaded.papers.findLast((paper) => paper.kind === 'invoice');
  const late = loaded.awaited
    .filter((row) => row.arrived_at === null)
    .sort((a, b) => (a.due_on ?? '').localeCompare(b.due_on ?? ''))
    .at(-1);
  const held = new Set(reckoned.yes.heldJobs);
  const { gross } = reckoned.totals;
  const figures: MessageFigures = {
    ...ofShop(settings),
    name: customer.name,
    car: order.counter_sale === 1 ? '' : car.words,
    plate: car.plate,
    order: `${order.number}`,
    sum: write.sum(invoice?.gross ?? gross),
    open: write.sum(invoice ? balanceOf(loaded) : gross + balanceOf(loaded)),
    jobs: reckoned.inSum
      .filter((job) => held.has(job.id))
      .map((job) => `${letterOf(job.place)} ${job.title}, ${write.sum(reckoned.totals.jobs.get(job.id) ?? 0)}`)
      .join('\n'),
    more: write.sum(Math.max(0, gross - reckoned.yes.ceiling)),
    part: late?.words ?? '',
    due: write.date(late?.due_on ?? null),
    promise: write.moment(order.promise_at),
  };
  return { customer, figures };
}

async function ofReminder(context: Context, reminderId: string, languageOf: (customer: CustomerRow) => Language) {
  const settings = settingsOf(context);
  const row = await reminderRow(context, reminderId);
  const { ahead, customer, car } = await aheadOf(context, row);
  if (!customer) throw notFound('customer', row.car_id);
  const write = writing(settings, languageOf(customer));
  const figures: MessageFigures = {
    ...ofShop(settings),
    name: customer.name,
    car: car.words,
    plate: car.plate,
    what: row.words,
    due: write.date(ahead.on),
    mileage: write.distance(ahead.shownDue, car.unit),
  };
  return { customer, figures };
}

/** A message about an order or a reminder, in the customer's language. Throws not-found, or bad-input when neither is named. */
export async function draftMessage(
  context: Context,
  about: 'ready' | 'found' | 'partLate' | 'reminder',
  of: { readonly orderId: string | null; readonly reminderId: string | null },
) {
  const settings = settingsOf(context);
  const languageOf = (customer: CustomerRow): Language =>
    customer.language === 'de' || customer.language === 'en' ? customer.language : settings.language;
  if (about === 'reminder' && of.reminderId === null) throw badInput('reminderId', 'needed');
  if (about !== 'reminder' && of.orderId === null) throw badInput('orderId', 'needed');
  const { customer, figures } =
    about === 'reminder'
      ? await ofReminder(context, of.reminderId ?? '', languageOf)
      : await ofOrder(context, of.orderId ?? '', languageOf);
  const language = languageOf(customer);
  return { customer, language, ...writeMessage(about, language, settings.messages[about], figures) };
}

async function contactLog(context: Context, of: { customerId: string | null; orderId: string | null }, most: number) {
  const { tx } = context;
  const { orderId } = of;
  // Entries joined into a customer belong to their log, too.
  const ids = of.customerId === null ? [] : await accountIds(context, of.customerId);
  const messages = await tx
    .selectFrom('message')
    .innerJoin('person', 'person.id', 'message.person_id')
    .leftJoin('work_order', 'work_order.id', 'message.work_order_id')
    .selectAll('message')
    .select(['person.name as by', 'work_order.number'])
    .where((on) =>
      on.and([
        ...(orderId === null ? [] : [on('message.work_order_id', '=', orderId)]),
        ...(ids.length === 0 ? [] : [on('message.customer_id', 'in', ids)]),
      ]),
    )
    .orderBy('message.at', 'desc')
    .limit(most)
    .execute();
  const tries = await tx
    .selectFrom('contact_try')
    .innerJoin('person', 'person.id', 'contact_try.person_id')
    .innerJoin('work_order', 'work_order.id', 'contact_try.work_order_id')
    .selectAll('contact_try')
    .select(['person.name as by', 'work_order.number'])
    .where((on) =>
      on.and([
        ...(orderId === null ? [] : [on('work_order.id', '=', orderId)]),
        ...(ids.length === 0 ? [] : [on('work_order.customer_id', 'in', ids)]),
      ]),
    )
    .orderBy('contact_try.at', 'desc')
    .limit(most)
    .execute();
  const answers = await tx
    .selectFrom('decision')
    .innerJoin('person', 'person.id', 'decision.person_id')
    .innerJoin('work_order', 'work_order.id', 'decision.work_order_id')
    .selectAll('decision')
    .select(['person.name as by', 'work_order.number as order_number'])
    .where((on) =>
      on.and([
        ...(orderId === null ? [] : [on('work_order.id', '=', orderId)]),
        ...(ids.length === 0 ? [] : [on('work_order.customer_id', 'in', ids)]),
      ]),
    )
    .where('decision.spoken_role', '<>', 'owner')
    .orderBy('decision.at', 'desc')
    .limit(most)
    .execute();
  const papers = await tx
    .selectFrom('paper_sent')
    .innerJoin('person', 'person.id', 'paper_sent.person_id')
    .innerJoin('paper', 'paper.id', 'paper_sent.paper_id')
    .innerJoin('work_order', 'work_order.id', 'paper.work_order_id')
    .selectAll('paper_sent')
    .select(['person.name as by', 'paper.kind', 'paper.number as paper_number', 'paper.work_order_id'])
    .select('work_order.number')
    .where((on) =>
      on.and([
        ...(orderId === null ? [] : [on('paper.work_order_id', '=', orderId)]),
        ...(ids.length === 0 ? [] : [on('paper.customer_id', 'in', ids)]),
      ]),
    )
    .orderBy('paper_sent.at', 'desc')
    .limit(most)
    .execute();
  const reminders =
    ids.length === 0 || orderId !== null
      ? []
      : await tx
          .selectFrom('reminder_try')
          .innerJoin('person', 'person.id', 'reminder_try.person_id')
          .innerJoin('reminder', 'reminder.id', 'reminder_try.reminder_id')
          .innerJoin('car_owner', (on) =>
            on.onRef('car_owner.car_id', '=', 'reminder.car_id').on('car_owner.to_day', 'is', null),
          )
          .selectAll('reminder_try')
          .select(['person.name as by', 'reminder.words as what'])
          .where('car_owner.customer_id', 'in', ids)
          .orderBy('reminder_try.at', 'desc')
          .limit(most)
          .execute();
  return { messages, tries, answers, papers, reminders };
}

export const messageHandlers: Handlers = {
  'message.draft': async ({ about, orderId, reminderId }, context) => {
    const key = about === 'part-late' ? 'partLate' : about;
    const { customer, language, subject, text, missing } = await draftMessage(context, key, { orderId, reminderId });
    return {
      ...{ customerId: customer.id, name: customer.name, phone: customer.phone, email: customer.email },
      ...{ tellBy: customer.tell_by, language, subject, text, missing: [...missing] },
    };
  },
  'message.record': async (input, context) => {
    const { tx } = context;
    const customer = await tx.selectFrom('customer').select('id').where('id', '=', input.customerId).executeTakeFirst();
    if (!customer) throw notFound('customer', input.customerId);
    if (input.orderId !== null) {
      const order = await tx.selectFrom('work_order').select('id').where('id', '=', input.orderId).executeTakeFirst();
      if (!order) throw notFound('order', input.orderId);
    }
    if (input.at !== null && input.at > context.now) throw badInput('at', 'in-the-future');
    const id = newId();
    await context.write.insert('message', {
      ...{ id, customer_id: customer.id, work_order_id: input.orderId, about: input.about, way: input.way },
      ...{ direction: input.direction, reached: input.reached ? 1 : 0, words: input.words },
      ...{ person_id: signedIn(context).id, at: input.at ?? context.now },
    });
    return { id };
  },
  'message.list': async ({ customerId, orderId, most }, context) => {
    if (customerId === null && orderId === null) throw badInput('customerId', 'needed');
    const { messages, tries, answers, papers, reminders } = await contactLog(context, { customerId, orderId }, most);
    const rows = [
      ...messages.map((row) => ({
        ...{ id: row.id, kind: 'message' as const, at: row.at, about: row.about as string, way: row.way as string },
        ...{ direction: row.direction, reached: row.reached === 1, words: row.words, upTo: null },
        ...{ orderId: row.work_order_id, number: row.number, by: row.by },
      })),
      ...tries.map((row) => ({
        ...{ id: row.id, kind: 'try' as const, at: row.at, about: '', way: row.way, direction: 'out' as const },
        ...{ reached: null, words: [row.reached, row.words].filter((text) => text !== '').join(': '), upTo: null },
        ...{ orderId: row.work_order_id, number: row.number, by: row.by },
      })),
      ...answers.map((row) => ({
        ...{ id: row.id, kind: 'answer' as const, at: row.at, about: row.ceiling === null ? 'no' : 'yes' },
        ...{ way: row.way as string, direction: 'in' as const, reached: true },
        words: [row.spoken_name, row.words].filter((text) => text !== '').join(': '),
        upTo: context.seesPrices ? row.ceiling : null,
        ...{ orderId: row.work_order_id, number: row.order_number, by: row.by },
      })),
      ...papers.map((row) => ({
        ...{ id: row.id, kind: 'paper' as const, at: row.at, about: row.kind as string, way: row.how },
        ...{ direction: 'out' as const, reached: null, words: `${row.paper_number}`, upTo: null },
        ...{ orderId: row.work_order_id, number: row.number, by: row.by },
      })),
      ...reminders.map((row) => ({
        ...{ id: row.id, kind: 'reminder' as const, at: row.at, about: row.outcome as string, way: '' },
        ...{ direction: 'out' as const, reached: row.outcome !== 'nobody' && row.outcome !== 'letter' },
        ...{ words: [row.what, row.words].filter((text) => text !== '').join(': '), upTo: null },
        ...{ orderId: null, number: null, by: row.by },
      })),
    ];
    return { rows: rows.sort((a, b) => b.at - a.at || b.id.localeCompare(a.id)).slice(0, most) };
  },
};

/** The day of the first ready notice that went out to the customer; a call counts when it reached them. null: none did. */
export async function readyNotice(context: Context, orderId: string): Promise<string | null> {
  const row = await context.tx
    .selectFrom('message')
    .select('at')
    .where('work_order_id', '=', orderId)
    .where('about', '=', 'ready')
    .where('direction', '=', 'out')
    .where((on) => on.or([on('reached', '=', 1), on('way', 'in', ['message', 'mail', 'letter'])]))
    .orderBy('at')
    .executeTakeFirst();
  return row ? civilDateOf(row.at, settingsOf(context).zone) : null;
}
