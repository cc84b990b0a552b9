import { copyText } from '../../core/customer/copy-text.ts';
import { type MayGo, takeOutOf } from '../../core/customer/take-out.ts';
import { addDays } from '../../core/time/civil.ts';
import { answersOf } from '../answers.ts';
import { agreedIn, noteChanged } from '../consents.ts';
import type { Context, Handlers } from '../context.ts';
import { newId } from '../id.ts';
import { settingsOf, signedIn } from '../people.ts';
import { copyOf, entriesOf, remindersOf } from '../privacy-copy.ts';
import { badInput, held, notFound } from '../refusal.ts';
import type { CustomerRow } from '../tables.ts';
import { COLUMNS, TAKEN_OUT, takeOutOfTrail } from '../taken-out.ts';
import { standingCustomer } from './customer.ts';

/** The entry of a customer with those that were joined into it. Throws not-found. */
async function entries(context: Context, customerId: string): Promise<[CustomerRow, ...CustomerRow[]]> {
  const id = await standingCustomer(context, customerId);
  const rows = await entriesOf(context, id);
  const own = rows.find((row) => row.id === id);
  if (!own) throw notFound('customer', customerId);
  return [own, ...rows.filter((row) => row !== own)];
}

/** Rows with words of theirs or about them, that words can be taken out of. */
async function wordsOf({ tx }: Context, ids: readonly string[]) {
  const messages = await tx
    .selectFrom('message')
    .select('id')
    .where('customer_id', 'in', ids)
    .where('words', '<>', TAKEN_OUT)
    .execute();
  const tries = await tx
    .selectFrom('contact_try')
    .innerJoin('work_order', 'work_order.id', 'contact_try.work_order_id')
    .select('contact_try.id')
    .where('work_order.customer_id', 'in', ids)
    .where('contact_try.words', '<>', TAKEN_OUT)
    .execute();
  return { messages, tries };
}

const openReminders = ({ tx }: Context, ids: readonly string[]) =>
  tx
    .selectFrom('reminder')
    .innerJoin('car_owner', 'car_owner.car_id', 'reminder.car_id')
    .select(['reminder.id', 'reminder.revision'])
    .where('car_owner.customer_id', 'in', ids)
    .where('car_owner.to_day', 'is', null)
    .where('reminder.closed_at', 'is', null)
    .execute();

/** What may go and what must stay of a customer, now. */
async function lookAt(context: Context, rows: readonly [CustomerRow, ...CustomerRow[]]) {
  const { tx } = context;
  const ids = rows.map((row) => row.id);
  const orders = await tx
    .selectFrom('work_order')
    .innerJoin('order_balance', 'order_balance.work_order_id', 'work_order.id')
    .select(['handed_over_at', 'cancelled_at', 'order_balance.owed', 'order_balance.invoiced', 'arrived_at'])
    .where((on) => on.or([on('customer_id', 'in', ids), on('payer_id', 'in', ids)]))
    .execute();
  const gone = (row: (typeof orders)[number]) =>
    row.handed_over_at !== null || (row.cancelled_at !== null && row.arrived_at === null);
  const papers = await tx.selectFrom('paper').select('issued_on').where('customer_id', 'in', ids).execute();
  const cars = await tx.selectFrom('car_owner').select('car_id').distinct().where('customer_id', 'in', ids).execute();
  const { messages, tries } = await wordsOf(context, ids);
  const reminded = (await remindersOf(context, ids)).filter((row) => !['', TAKEN_OUT].includes(row.words));
  const heard = (await answersOf(context, [rows[0].id])).get(rows[0].id);
  const filled = (row: CustomerRow) =>
    [row.phone, row.phone2, row.email, row.tell_by].filter((text) => text !== '').length +
    (row.address === '[]' ? 0 : 1);
  const add = (of: (row: CustomerRow) => number) => rows.reduce((all, row) => all + of(row), 0);
  return takeOutOf({
    today: context.today,
    years: settingsOf(context).retentionYears.years,
    hasName: rows.some((row) => row.name !== TAKEN_OUT),
    contacts: add(filled),
    others: add((row) => (JSON.parse(row.may_yes) as unknown[]).length),
    hasNote: rows.some((row) => row.note !== ''),
    words: messages.length + tries.length + reminded.length,
    tries: heard?.tries.length ?? 0,
    openReminders: (await openReminders(context, ids)).length,
    orders: orders.length,
    cars: cars.length,
    papers: papers.map((row) => row.issued_on),
    open: orders.some((row) => row.owed !== 0 || !gone(row)),
  });
}

/** Takes the words out of calls, messages and answers to reminders; when and how they were stays. */
async function takeOutWords(context: Context, ids: readonly string[]): Promise<void> {
  const { messages, tries } = await wordsOf(context, ids);
  for (const { id } of messages) await context.write.takeOut('message', id, { words: TAKEN_OUT });
  for (const { id } of tries) await context.write.takeOut('contact_try', id, { words: TAKEN_OUT, reached: TAKEN_OUT });
  for (const row of await remindersOf(context, ids))
    if (!['', TAKEN_OUT].includes(row.words)) await context.write.takeOut('reminder_try', row.id, { words: TAKEN_OUT });
}

/** Closes what is due of their cars and notes that they are not to be reminded. */
async function takeOutReminders(context: Context, rows: readonly CustomerRow[]): Promise<void> {
  const open = await openReminders(
    context,
    rows.map((row) => row.id),
  );
  for (const { id, revision } of open)
    await context.write.update('reminder', id, {
      ...{ closed_at: context.now, close_why: TAKEN_OUT, revision: revision + 1 },
    });
  for (const row of rows) {
    const before = agreedIn(row);
    const now = { ...before, reminders: false };
    await context.write.update('customer', row.id, { consents: JSON.stringify(now) });
    await noteChanged(context, row.id, before, now);
  }
}

export const privacyHandlers: Handlers = {
  'privacy.ask': async ({ customerId, askedOn, way, words }, context) => {
    if (askedOn > context.today) throw badInput('askedOn', 'in-the-future');
    const [own] = await entries(context, customerId);
    const id = newId();
    const answerBy = addDays(askedOn, settingsOf(context).privacyDays);
    await context.write.insert('privacy_request', {
      ...{ id, revision: 1, customer_id: own.id, asked_on: askedOn, answer_by: answerBy, way, words },
      ...{ answered_at: null, answer: null, answer_words: '', answered_by: null, person_id: signedIn(context).id },
    });
    return { id, revision: 1, answerBy };
  },
  'privacy.list': async ({ customerId }, context) => {
    const rows = await context.tx
      .selectFrom('privacy_request')
      .innerJoin('person', 'person.id', 'privacy_request.person_id')
      .selectAll('privacy_request')
      .select('person.name as by')
      .where(
        'customer_id',
        'in',
        (await entries(context, customerId)).map((row) => row.id),
      )
      .orderBy('asked_on', 'desc')
      .orderBy('privacy_request.id', 'desc')
      .execute();
    return {
      rows: rows.map((row) => ({
        ...{ id: row.id, revision: row.revision, askedOn: row.asked_on, answerBy: row.answer_by, way: row.way },
        ...{ words: row.words, answeredAt: row.answered_at, answer: row.answer, answerWords: row.answer_words },
        by: row.by,
      })),
    };
  },
  'privacy.answer': async ({ id, revision, answer, words }, context) => {
    const row = await context.tx.selectFrom('privacy_request').selectAll().where('id', '=', id).executeTakeFirst();
    if (!row) throw notFound('privacy_request', id);
    if (row.answered_at !== null) throw badInput('id', 'closed-already');
    const patch = { answer, answer_words: words, answered_at: context.now, answered_by: signedIn(context).id };
    return {
      id,
      revision: await context.write.edit('privacy_request', id, revision, patch, { answer, words }, (now) => ({
        answer: now.answer,
      })),
    };
  },
  'privacy.copy': async ({ customerId }, context) => {
    const rows = await entries(context, customerId);
    const data = await copyOf(context, rows);
    const { name } = rows[0];
    const title = `What ${settingsOf(context).name} keeps about ${name}, ${context.today}`;
    return {
      name: `${name.replace(/[^\p{L}\p{N} -]/gu, '')} ${context.today}`.trim(),
      text: copyText(title, data),
      json: JSON.stringify({ title, ...data }, null, 2),
    };
  },
  'privacy.look': async ({ customerId }, context) => {
    const rows = await entries(context, customerId);
    const { goes, stays } = await lookAt(context, rows);
    return { revision: rows[0].revision, goes: [...goes], stays: [...stays] };
  },
  'privacy.takeOut': async ({ customerId, revision, goes }, context) => {
    const rows = await entries(context, customerId);
    const [own] = rows;
    const ids = rows.map((row) => row.id);
    const may = new Set<MayGo>((await lookAt(context, rows)).goes.map((one) => one.what));
    const stays = goes.filter((what) => !may.has(what));
    if (stays.length > 0) throw held(stays.map((what) => ({ what: 'must-stay', with: { what } })));
    const next = await context.write.edit('customer', own.id, revision, {}, { goes }, () => ({ goes }));
    if (goes.includes('told')) await takeOutWords(context, ids);
    if (goes.includes('reminders')) await takeOutReminders(context, rows);
    const patch = Object.assign({}, ...goes.map((what) => COLUMNS[what] ?? {})) as Partial<CustomerRow>;
    const habits = goes.includes('habits') ? { answers_from: context.now } : {};
    if (Object.keys({ ...patch, ...habits }).length > 0)
      for (const id of ids) await context.write.takeOut('customer', id, { ...patch, ...habits });
    const trailRows = await takeOutOfTrail(context, ids, Object.keys(patch));
    return { id: own.id, revision: next, trailRows };
  },
};
