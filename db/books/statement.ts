import { USUAL_EDGES } from '../../core/books/ageing.ts';
import { type Statement, type StatementPeriod, statementOf } from '../../core/books/statement.ts';
import type { StatementDocument } from '../../core/paper/statement.ts';
import { instantToWall } from '../../core/time/instant.ts';
import { currencyOf } from '../order/document.ts';
import { notFound } from '../refusal.ts';
import { type Books, entriesOf, ordersOpenOn, type ShownEntry } from './account.ts';
import { accountIds, holdersOf, ordersOfAccount } from './on-account.ts';

/** Which statement: whose, of which days, from what was recorded by an instant. */
export interface StatementWanted extends StatementPeriod {
  readonly customerId: string;
  readonly asOf: number;
}

/** The statement of a customer's account; the papers of entries that were joined into it are read with its own. */
export async function customerStatement(books: Books, wanted: StatementWanted): Promise<Statement<ShownEntry>> {
  const { tx } = books;
  const orders = await ordersOfAccount(tx, await accountIds(tx, wanted.customerId), 'all');
  const ids = orders.map(({ id }) => id);
  return statementOf(await entriesOf(books, ids, wanted.asOf), { from: wanted.from, until: wanted.until });
}

/** The statement as a paper. Throws not-found for a customer who is not here. */
export async function statementPaper(books: Books, wanted: StatementWanted): Promise<StatementDocument> {
  const { tx, settings, practice } = books;
  const customer = await tx.selectFrom('customer').selectAll().where('id', '=', wanted.customerId).executeTakeFirst();
  if (!customer) throw notFound('customer', wanted.customerId);
  const seen = await customerStatement(books, wanted);
  const { language: own } = customer;
  return {
    practice,
    language: own === 'en' || own === 'de' ? own : settings.language,
    dateForm: settings.dateForm,
    size: settings.paper,
    currency: currencyOf(settings),
    garage: {
      ...{ name: settings.name, address: settings.address, phone: settings.phone, email: settings.email },
      ...{ registration: settings.registration, taxNumber: settings.taxNumber },
      logo: settings.logoPng === null ? null : { kind: 'png', base64: settings.logoPng },
    },
    to: [customer.name, ...(JSON.parse(customer.address) as string[])],
    taxNumber: customer.tax_number,
    ...{ from: wanted.from, until: wanted.until },
    asOf: instantToWall(wanted.asOf, settings.zone),
    asOfInstant: wanted.asOf,
    ...{ opening: seen.opening, sums: seen.sums, closing: seen.closing },
    rows: seen.rows.map(({ entry, balance }) => ({
      ...{ on: entry.on, kind: entry.kind, number: entry.number, method: entry.method },
      ...{ about: aboutOf(entry), amount: entry.amount, balance },
    })),
    open: seen.open.map(({ entry, dueOn, open, daysPastDue }) => ({
      ...{ number: entry.number, on: entry.on, dueOn, about: aboutOf(entry), gross: entry.amount, open, daysPastDue },
    })),
    unapplied: seen.unapplied.map(({ from, sum }) => ({ about: from === null ? null : aboutOf(from), sum })),
    ageing: ageingOf(seen),
  };
}

const aboutOf = ({ orderNumber, plate }: ShownEntry) => ({ orderNumber, plate });

/** The sums by days past due with their edges. */
export const ageingOf = ({ ageing }: Pick<Statement<ShownEntry>, 'ageing'>) =>
  ageing.buckets.map((sum, at) => ({ upTo: USUAL_EDGES[at] ?? null, sum }));

export interface Owing {
  readonly customerId: string;
  readonly statement: Statement<ShownEntry>;
}

/** Who had an open invoice on a civil day, the most first. */
export async function owingOn(books: Books, day: string, asOf: number): Promise<readonly Owing[]> {
  const orders = await ordersOpenOn(books, day);
  const holders = await holdersOf(books.tx, orders);
  const byHolder = new Map<string, ShownEntry[]>();
  for (const entry of await entriesOf(books, orders, asOf)) {
    const holder = holders.get(entry.item) ?? '';
    const mine = byHolder.get(holder);
    if (mine) mine.push(entry);
    else byHolder.set(holder, [entry]);
  }
  return [...byHolder]
    .map(([customerId, entries]) => ({ customerId, statement: statementOf(entries, { from: day, until: day }) }))
    .filter(({ statement }) => statement.open.length > 0)
    .sort((a, b) => b.statement.closing - a.statement.closing || (a.customerId < b.customerId ? -1 : 1));
}
