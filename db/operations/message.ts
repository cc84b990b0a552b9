import { amountText, wholeText } from '../../core/paper/figures.ts';
import { type MessageFigures, writeMessage } from '../../core/paper/message.ts';
import { paperWords } from '../../core/paper/words.ts';
import { civilDateOf, instantToWall } from '../../core/time/instant.ts';
import { contactLog } from '../contact-log.ts';
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
    return { rows: await contactLog(context, { customerId, orderId }, most) };
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
