import type { z } from 'zod';
import type { customerFields } from '../../core/contract/desk.ts';
import { answersOf } from '../answers.ts';
import { ordersOfAccount } from '../books/on-account.ts';
import { agreedIn, consentsOf, noteChanged, noteConsent } from '../consents.ts';
import type { Context, Handlers } from '../context.ts';
import { carsOfCustomer } from '../customer-cars.ts';
import { foldPhone, foldText } from '../fold.ts';
import { newId } from '../id.ts';
import { eachOf } from '../order/load-rows.ts';
import { badInput, notAllowed, notFound } from '../refusal.ts';
import type { CustomerRow } from '../tables.ts';

type CustomerFields = z.output<typeof customerFields>;

/** The columns of a customer's fields. */
export const customerColumns = (
  fields: CustomerFields,
): Omit<CustomerRow, 'id' | 'revision' | 'made_at' | 'joined_into' | 'answers_from'> => ({
  name: fields.name,
  phone: fields.phone,
  phone2: fields.phone2,
  email: fields.email,
  address: JSON.stringify(fields.address),
  tell_by: fields.tellBy,
  tax_number: fields.taxNumber,
  tax_exempt: fields.taxExempt,
  po_required: fields.poRequired ? 1 : 0,
  po_before: fields.poBefore === 'work' ? 'work' : null,
  credit_limit: fields.creditLimit,
  may_yes: JSON.stringify(fields.mayYes),
  note: fields.note,
  language: fields.language,
  consents: fields.consents === null ? null : JSON.stringify(fields.consents),
  invoice_to: fields.invoiceTo,
  find_name: foldText(fields.name),
  find_phone: foldPhone(fields.phone),
  find_phone2: foldPhone(fields.phone2),
});

const customerFieldsOf = (row: CustomerRow): CustomerFields => ({
  name: row.name,
  phone: row.phone,
  phone2: row.phone2,
  email: row.email,
  address: JSON.parse(row.address) as string[],
  tellBy: row.tell_by,
  taxNumber: row.tax_number,
  taxExempt: row.tax_exempt,
  poRequired: row.po_required === 1,
  poBefore: row.po_before ?? 'invoice',
  creditLimit: row.credit_limit,
  mayYes: JSON.parse(row.may_yes) as CustomerFields['mayYes'],
  note: row.note,
  language: row.language === 'en' || row.language === 'de' ? row.language : null,
  consents: row.consents === null ? null : (JSON.parse(row.consents) as CustomerFields['consents']),
  invoiceTo: row.invoice_to,
});

/** A new customer. */
export async function addCustomer(context: Context, fields: CustomerFields): Promise<string> {
  ownersLimit(context, null, fields.creditLimit);
  const id = newId();
  await context.write.insert('customer', {
    id,
    revision: 1,
    made_at: context.now,
    ...customerColumns(await withPayer(context, fields, null)),
    joined_into: null,
    answers_from: null,
  });
  await noteChanged(context, id, null, fields.consents);
  return id;
}

/** How much an account may owe is the owner's to say. Throws not-allowed. */
function ownersLimit(context: Context, was: number | null, now: number | null): void {
  if (was !== now && context.who?.role !== 'owner') throw notAllowed('role', { needs: 'owner' });
}

/** The fields with who pays as they stand now. Throws not-found, or bad-input for somebody who is to pay for themselves. */
async function withPayer(context: Context, fields: CustomerFields, id: string | null): Promise<CustomerFields> {
  if (fields.invoiceTo === null) return fields;
  const invoiceTo = await standingCustomer(context, fields.invoiceTo);
  if (invoiceTo === id) throw badInput('invoiceTo', 'same-row-twice');
  return { ...fields, invoiceTo };
}

/** The customer that an id means now: the entry that it was joined into, else itself. Throws not-found. */
export async function standingCustomer(context: Context, id: string): Promise<string> {
  const row = await context.tx.selectFrom('customer').select('joined_into').where('id', '=', id).executeTakeFirst();
  if (!row) throw notFound('customer', id);
  return row.joined_into ?? id;
}

/** An entry and those that were joined into it, whose past is read with its own. */
async function joinedWith(context: Context, row: CustomerRow) {
  const inside = await context.tx
    .selectFrom('customer')
    .innerJoin('customer_join', 'customer_join.from_id', 'customer.id')
    .select(['customer.id', 'customer.name', 'customer_join.id as joinId', 'customer_join.at'])
    .where('customer.joined_into', '=', row.id)
    .where('customer_join.what', '=', 'joined')
    .orderBy('customer_join.at')
    .orderBy('customer_join.id')
    .execute();
  // The last joining of an entry is the one that holds.
  const joined = [...new Map(inside.map((one) => [one.id, one])).values()];
  const into =
    row.joined_into === null
      ? undefined
      : await context.tx
          .selectFrom('customer')
          .select(['id', 'name'])
          .where('id', '=', row.joined_into)
          .executeTakeFirst();
  return { ids: [row.id, ...joined.map((one) => one.id)], joined, joinedInto: into ?? null };
}

async function noShowsOf(context: Context, ids: readonly string[]): Promise<number> {
  const row = await context.tx
    .selectFrom('booking')
    .innerJoin('work_order', 'work_order.id', 'booking.work_order_id')
    .select(({ fn }) => fn.countAll<number>().as('n'))
    .where('work_order.customer_id', 'in', ids)
    .where('booking.no_show_at', 'is not', null)
    .executeTakeFirstOrThrow();
  return Number(row.n);
}

/** Invoiced orders of the account that are not settled, newest first: also those they pay for others. */
async function openOf({ tx }: Context, ids: readonly string[]) {
  const open = (await ordersOfAccount(tx, ids, 'unsettled')).filter((order) => order.invoiced);
  const owed = new Map(open.map((order) => [order.id, order.owed]));
  const rows = await eachOf([...owed.keys()], (some) =>
    tx
      .selectFrom('work_order')
      .innerJoin('car', 'car.id', 'work_order.car_id')
      .select(['work_order.id', 'work_order.number', 'work_order.opened_at', 'car.words', 'car.plate'])
      .where('work_order.id', 'in', some)
      .execute(),
  );
  return rows
    .sort((a, b) => b.opened_at - a.opened_at || b.number - a.number)
    .map(({ id, number, words, plate }) => ({
      ...{ id, number, car: `${plate} ${words}`.trim(), toPay: owed.get(id) ?? 0 },
    }));
}

export const customerHandlers: Handlers = {
  'customer.add': async (input, context) => ({ id: await addCustomer(context, input), revision: 1 }),
  'customer.change': async ({ id, revision, change }, context) => {
    const row = await context.tx.selectFrom('customer').selectAll().where('id', '=', id).executeTakeFirst();
    if (!row) throw notFound('customer', id);
    const fields = Object.assign(
      customerFieldsOf(row),
      Object.fromEntries(Object.entries(change).filter(([, value]) => value !== undefined)),
    );
    ownersLimit(context, row.credit_limit, fields.creditLimit);
    const columns = customerColumns(await withPayer(context, fields, id));
    const next = await context.write.edit('customer', id, revision, columns, change, customerFieldsOf);
    await noteChanged(context, id, customerFieldsOf(row).consents, fields.consents);
    return { id, revision: next };
  },
  'customer.consent': async ({ id, revision, what, answer, way, on }, context) => {
    const row = await context.tx.selectFrom('customer').selectAll().where('id', '=', id).executeTakeFirst();
    if (!row) throw notFound('customer', id);
    if (row.joined_into !== null) throw badInput('id', 'joined-already');
    const day = on ?? context.today;
    if (day > context.today) throw badInput('on', 'in-the-future');
    const said = answer === 'unasked' ? null : answer === 'yes';
    const consents = { ...agreedIn(row), [what]: said };
    const patch = { consents: JSON.stringify(consents) };
    const next = await context.write.edit('customer', id, revision, patch, { what, answer }, customerFieldsOf);
    await noteConsent(context, id, { what, answer, way, on: day });
    return { id, revision: next };
  },
  'customer.answers': async ({ id }, context) => {
    const standing = await standingCustomer(context, id);
    const found = (await answersOf(context, [standing])).get(standing);
    return { tries: [...(found?.tries ?? [])], best: found?.best ?? null, bestPhone: found?.bestPhone ?? null };
  },
  'customer.get': async ({ id }, context) => {
    const row = await context.tx.selectFrom('customer').selectAll().where('id', '=', id).executeTakeFirst();
    if (!row) throw notFound('customer', id);
    const { ids, ...joining } = await joinedWith(context, row);
    const orders = await context.tx
      .selectFrom('work_order')
      .innerJoin('car', 'car.id', 'work_order.car_id')
      .select(['work_order.id', 'work_order.number', 'work_order.opened_at', 'car.words', 'car.plate'])
      .where('work_order.customer_id', 'in', ids)
      .orderBy('work_order.opened_at', 'desc')
      .limit(200)
      .execute();
    const open = await openOf(context, ids);
    const toPay = new Map(open.map((one) => [one.id, one.toPay]));
    return {
      id,
      revision: row.revision,
      fields: customerFieldsOf(row),
      ...(await carsOfCustomer(context, ids)),
      orders: orders.map((order) => ({
        id: order.id,
        number: order.number,
        openedAt: order.opened_at,
        car: `${order.plate} ${order.words}`.trim(),
        toPay: context.seesPrices ? (toPay.get(order.id) ?? 0) : null,
      })),
      open: context.seesPrices ? open : [],
      owed: context.seesPrices ? open.reduce((sum, order) => sum + order.toPay, 0) : null,
      since: row.made_at,
      consents: await consentsOf(context, ids),
      noShows: await noShowsOf(context, ids),
      ...joining,
    };
  },
};
