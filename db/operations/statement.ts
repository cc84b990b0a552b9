import type { OutputOf } from '../../core/contract/index.ts';
import { statementPdf } from '../../core/paper/pdf/statement-pdf.ts';
import { statementName } from '../../core/paper/statement-words.ts';
import type { ShownEntry } from '../books/account.ts';
import { booksOf, periodOf } from '../books/asked.ts';
import { ageingOf, customerStatement, owingOn, statementPaper } from '../books/statement.ts';
import type { Context, Handlers } from '../context.ts';
import { newId } from '../id.ts';
import { eachOf } from '../order/load-rows.ts';
import { loadFonts } from '../pdf.ts';
import { signedIn } from '../people.ts';
import { badInput, notFound } from '../refusal.ts';
import { standingCustomer } from './customer.ts';
import { statementRunHandlers, statementsInFile } from './statement-run.ts';

const base64 = (bytes: Uint8Array) => Buffer.from(bytes).toString('base64');

const shown = (entry: ShownEntry) => ({
  ...{ kind: entry.kind, on: entry.on, paperId: entry.paperId, number: entry.number },
  ...{ orderId: entry.item, orderNumber: entry.orderNumber, plate: entry.plate },
});

async function sentOf(context: Context, customerId: string): Promise<OutputOf<'statement.get'>['sent']> {
  const rows = await context.tx
    .selectFrom('statement_sent')
    .innerJoin('statement', 'statement.id', 'statement_sent.statement_id')
    .innerJoin('person', 'person.id', 'statement_sent.person_id')
    .select(['statement_sent.id', 'statement_sent.at', 'statement_sent.how', 'person.name as by'])
    .select(['statement.from_day as from', 'statement.until_day as until', 'statement.as_of as asOf'])
    .select('statement.closing')
    .where('statement.customer_id', '=', customerId)
    .orderBy('statement_sent.at', 'desc')
    .orderBy('statement_sent.id', 'desc')
    .limit(20)
    .execute();
  return rows;
}

async function lastSent(context: Context, ids: readonly string[]): Promise<ReadonlyMap<string, number>> {
  const rows = await eachOf(ids, (some) =>
    context.tx
      .selectFrom('statement_sent')
      .innerJoin('statement', 'statement.id', 'statement_sent.statement_id')
      .select(({ fn }) => ['statement.customer_id as id', fn.max('statement_sent.at').as('at')])
      .where('statement.customer_id', 'in', some)
      .groupBy('statement.customer_id')
      .execute(),
  );
  return new Map(rows.map(({ id, at }) => [id, Number(at)]));
}

type Named =
  | { readonly id: string }
  | { readonly customerId: string; readonly from: string; readonly until: string; readonly asOf: number };

/** The row of a statement that somebody names: by its id, or by what it was made from, written down where it is new. */
async function statementRow(context: Context, named: Named): Promise<string> {
  const { tx } = context;
  if ('id' in named) {
    const row = await tx.selectFrom('statement').select('id').where('id', '=', named.id).executeTakeFirst();
    if (!row) throw notFound('statement', named.id);
    return row.id;
  }
  const customerId = await standingCustomer(context, named.customerId);
  if (named.asOf > context.now) throw badInput('asOf', 'in-the-future');
  const period = periodOf(context, named);
  const known = await tx
    .selectFrom('statement')
    .select('id')
    .where('customer_id', '=', customerId)
    .where('from_day', '=', period.from)
    .where('until_day', '=', period.until)
    .where('as_of', '=', named.asOf)
    .executeTakeFirst();
  if (known) return known.id;
  const { closing } = await customerStatement(booksOf(context), { ...period, customerId, asOf: named.asOf });
  const id = newId();
  await context.write.insert('statement', {
    ...{ id, run_id: null, joined: 0, customer_id: customerId },
    ...{ from_day: period.from, until_day: period.until, as_of: named.asOf },
    ...{ closing, person_id: signedIn(context).id, at: context.now },
  });
  return id;
}

export const statementHandlers: Handlers = {
  ...statementRunHandlers,
  'statement.get': async (input, context) => {
    const customerId = await standingCustomer(context, input.customerId);
    const wanted = { ...periodOf(context, input), customerId, asOf: context.now };
    const seen = await customerStatement(booksOf(context), wanted);
    const { from, until, opening, closing, sums } = seen;
    return {
      ...{ from, until, asOf: wanted.asOf, opening, closing, ...sums },
      rows: seen.rows.map(({ entry, balance }) => ({ ...shown(entry), amount: entry.amount, balance })),
      open: seen.open.map(({ entry, dueOn, open, daysPastDue }) => ({
        ...shown(entry),
        ...{ dueOn, gross: entry.amount, open, daysPastDue },
      })),
      unapplied: seen.unapplied.flatMap(({ from: entry, sum }) =>
        entry === null
          ? []
          : [{ orderId: entry.item, orderNumber: entry.orderNumber, plate: entry.plate, sum: Number(sum) }],
      ),
      ageing: ageingOf(seen),
      reckoning: {
        opening: seen.reckoning.opening.map((step) => ({ ...step, on: { ...step.on } })),
        closing: seen.reckoning.closing.map((step) => ({ ...step, on: { ...step.on } })),
      },
      sent: await sentOf(context, customerId),
    };
  },
  'statement.pdf': async (input, context) => {
    const customerId = await standingCustomer(context, input.customerId);
    const asOf = input.asOf ?? context.now;
    if (asOf > context.now) throw badInput('asOf', 'in-the-future');
    const document = await statementPaper(booksOf(context), { ...periodOf(context, input), customerId, asOf });
    const name = statementName(document).replace(/[^\p{L}\p{M}\p{N} ,.-]/gu, '');
    return { name: `${name}.pdf`, base64: base64(await statementPdf(document, loadFonts())) };
  },
  'statement.owing': async (input, context) => {
    const { until } = periodOf(context, { from: null, until: input.until });
    const owing = await owingOn(booksOf(context), until, context.now);
    const ids = owing.map(({ customerId }) => customerId);
    const people = await eachOf(ids, (some) =>
      context.tx.selectFrom('customer').select(['id', 'name', 'email']).where('id', 'in', some).execute(),
    );
    const byId = new Map(people.map((one) => [one.id, one]));
    const sent = await lastSent(context, ids);
    return {
      until,
      rows: owing.map(({ customerId, statement }) => ({
        customerId,
        customer: byId.get(customerId)?.name ?? '',
        email: byId.get(customerId)?.email ?? '',
        closing: statement.closing,
        pastDue: statement.open.reduce((sum, one) => sum + (one.daysPastDue > 0 ? one.open : 0), 0),
        invoices: statement.open.length,
        ageing: ageingOf(statement),
        unapplied: statement.ageing.unapplied,
        sentAt: sent.get(customerId) ?? null,
      })),
      closing: owing.reduce((sum, { statement }) => sum + statement.closing, 0),
    };
  },
  'statement.sent': async (input, context) => {
    const statementId = await statementRow(context, input);
    const id = newId();
    await context.write.insert('statement_sent', {
      ...{ id, statement_id: statementId, how: input.how, person_id: signedIn(context).id, at: context.now },
    });
    return { id };
  },
  'statement.noted': async (input, context) => {
    const ids =
      'runId' in input
        ? await statementsInFile(context, input.runId, input.name)
        : [await statementRow(context, input)];
    const before = await eachOf(ids, (some) =>
      context.tx
        .selectFrom('statement_noted')
        .select('statement_id')
        .where('statement_id', 'in', some)
        .where('what', '=', input.what)
        .execute(),
    );
    const noted = new Set(before.map((row) => row.statement_id));
    const fresh = ids.filter((id) => !noted.has(id));
    for (const statement_id of fresh)
      await context.write.insert('statement_noted', {
        ...{ id: newId(), statement_id, what: input.what, person_id: signedIn(context).id, at: context.now },
      });
    return { noted: fresh.length };
  },
};
