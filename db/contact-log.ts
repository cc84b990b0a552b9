import type { OutputOf } from '../core/contract/index.ts';
import { accountIds } from './books/on-account.ts';
import type { Context } from './context.ts';

type Row = OutputOf<'message.list'>['rows'][number];

interface Of {
  readonly customerId: string | null;
  readonly orderId: string | null;
}

/** What was done with statements of these entries, and how they were sent. */
async function statements({ tx }: Context, ids: readonly string[], most: number) {
  const of = () =>
    tx
      .selectFrom('statement')
      .select('statement.until_day as until')
      .where('statement.customer_id', 'in', ids)
      .limit(most);
  const noted = await of()
    .innerJoin('statement_noted as done', 'done.statement_id', 'statement.id')
    .innerJoin('person', 'person.id', 'done.person_id')
    .select(['done.id', 'done.at', 'done.what', 'person.name as by'])
    .orderBy('done.at', 'desc')
    .execute();
  const sent = await of()
    .innerJoin('statement_sent as done', 'done.statement_id', 'statement.id')
    .innerJoin('person', 'person.id', 'done.person_id')
    .select(['done.id', 'done.at', 'done.how', 'person.name as by'])
    .orderBy('done.at', 'desc')
    .execute();
  return [
    ...noted.map(({ what, ...row }) => ({ ...row, about: what as string, how: '' })),
    ...sent.map((row) => ({ ...row, about: 'sent' })),
  ];
}

async function read(context: Context, of: Of, most: number) {
  const { tx } = context;
  const { orderId } = of;
  // Entries joined into a customer belong to their log, too.
  const ids = of.customerId === null ? [] : await accountIds(tx, of.customerId);
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
  const accounts = ids.length === 0 || orderId !== null ? [] : await statements(context, ids, most);
  return { messages, tries, answers, papers, reminders, accounts };
}

/** Who told whom what, when and how, of a customer or of one order: newest first, so many at most. */
export async function contactLog(context: Context, of: Of, most: number): Promise<Row[]> {
  const { messages, tries, answers, papers, reminders, accounts } = await read(context, of, most);
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
    ...accounts.map((row) => ({
      ...{ id: row.id, kind: 'statement' as const, at: row.at, about: row.about, way: row.how },
      ...{ direction: 'out' as const, reached: null, words: row.until, upTo: null },
      ...{ orderId: null, number: null, by: row.by },
    })),
  ];
  return rows.sort((a, b) => b.at - a.at || b.id.localeCompare(a.id)).slice(0, most);
}
