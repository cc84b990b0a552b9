import type { z } from 'zod';
import { debtOf, exposureOf, type OpenYes, willOwe } from '../core/books/exposure.ts';
import { paidAhead } from '../core/books/paid-ahead.ts';
import type { orderCredit } from '../core/contract/account.ts';
import { type Money, money, sum } from '../core/money/money.ts';
import { accountIds, ordersOfAccount } from './books/on-account.ts';
import type { Context } from './context.ts';
import { type Loaded, loadOrder, loadOrders } from './order/load.ts';
import { type Reckoned, reckonOrder } from './order/reckon.ts';
import { settingsOf } from './people.ts';
import type { CreditPassRow, CustomerRow } from './tables.ts';

/** An order of an account that is not invoiced, against the account. */
interface OpenOrder extends OpenYes {
  readonly number: number;
  /** On its sheet and not said yes to. */
  readonly asked: Money;
  readonly pass: PassedBy | null;
}

interface PassedBy extends CreditPassRow {
  readonly by: string;
}

/** What an account owes, and its orders that are not invoiced, the first yes first. */
export interface Account {
  readonly openInvoices: Money;
  readonly orders: readonly OpenOrder[];
}

/** Who pays for an order that has no invoice yet; see `books/on-account.ts`. */
export const accountOf = (loaded: Loaded): CustomerRow => loaded.payer ?? loaded.customer;

const upToOf = (reckoned: Reckoned): Money => (reckoned.yes.covered.size === 0 ? money(0) : reckoned.yes.ceiling);
const saidAt = (loaded: Loaded): number =>
  loaded.decisions.findLast((row) => row.ceiling !== null)?.recorded_at ?? Number.MAX_SAFE_INTEGER;

/** Whatever is paid for by an account (with entries joined into it) and not invoiced, or invoiced and open. */
export async function readAccount(context: Context, accountId: string): Promise<Account> {
  const { tx } = context;
  const rows = await ordersOfAccount(tx, await accountIds(tx, accountId), 'unsettled');
  const unbilled = rows.filter((row) => !row.invoiced && row.cancelledAt === null).map((row) => row.id);
  const passes = await passesOf(context, unbilled);
  const settings = settingsOf(context);
  const orders = (await loadOrders(context, unbilled)).map((loaded) => {
    const reckoned = reckonOrder(loaded, settings);
    const upTo = upToOf(reckoned);
    return {
      ...{ orderId: loaded.order.id, number: loaded.order.number, upTo, paidAhead: paidAhead(loaded.payments, null) },
      at: saidAt(loaded),
      asked: money(Math.max(0, reckoned.totals.gross - upTo)),
      pass: passes.get(loaded.order.id) ?? null,
    };
  });
  return {
    // What was paid too much on one invoice stands alone and never hides in another.
    openInvoices: sum(rows.filter((row) => row.invoiced).map((row) => money(Math.max(0, row.owed)))),
    orders: orders.sort((a, b) => a.at - b.at || a.number - b.number),
  };
}

async function passesOf({ tx }: Context, orderIds: readonly string[]): Promise<Map<string, PassedBy>> {
  if (orderIds.length === 0) return new Map();
  const rows = await tx
    .selectFrom('credit_pass')
    .innerJoin('person', 'person.id', 'credit_pass.person_id')
    .selectAll('credit_pass')
    .select('person.name as by')
    .where('work_order_id', 'in', orderIds)
    .orderBy('at')
    .orderBy('credit_pass.id')
    .execute();
  return new Map(rows.map((row) => [row.work_order_id, row]));
}

/** Whether the owner let the order go on with the yes that it has now: a higher one wants a word of its own. */
export const passes = ({ pass, upTo }: Pick<OpenOrder, 'pass' | 'upTo'>): boolean =>
  pass !== null && upTo <= pass.up_to;

/** An order of an account against its limit. */
export function orderAgainst({ openInvoices, orders }: Account, orderId: string, limit: number) {
  const order = orders.find((one) => one.orderId === orderId);
  const debt = debtOf(openInvoices, said(orders), order === undefined || order.upTo === 0 ? null : orderId);
  const { exposure, over } = exposureOf(debt, money(limit));
  const mine = order === undefined ? money(0) : willOwe(order);
  const held = over > 0 && mine > 0 && order !== undefined && !passes(order);
  return { limit, openInvoices, authorised: debt.authorised, mine, exposure, over, held, order };
}

/** Orders that somebody said yes to. */
export const said = (orders: readonly OpenOrder[]) => orders.filter((one) => one.upTo > 0);

type OrderCredit = z.output<typeof orderCredit>;

/** Where an order stands against the limit of whoever pays for it; null where no limit is set or it is invoiced. */
export async function creditOf(context: Context, loaded: Loaded): Promise<OrderCredit | null> {
  const account = accountOf(loaded);
  const { credit_limit: limit } = account;
  if (limit === null || loaded.papers.some((paper) => paper.kind === 'invoice')) return null;
  const { held, order, ...figures } = orderAgainst(await readAccount(context, account.id), loaded.order.id, limit);
  const pass = order === undefined || !passes(order) ? null : order.pass;
  return {
    ...{ accountId: account.id, name: account.name, held },
    figures: context.seesPrices ? figures : null,
    pass: pass && { by: pass.by, at: pass.at, reason: pass.reason },
  };
}

/** The same for an order that was just booked; nothing more is read where the account has no limit. */
export async function creditAtBooking(
  context: Context,
  orderId: string,
  accountId: string,
): Promise<OrderCredit | null> {
  const row = await context.tx
    .selectFrom('customer')
    .select('credit_limit')
    .where('id', '=', accountId)
    .executeTakeFirst();
  return row?.credit_limit == null ? null : creditOf(context, await loadOrder(context, orderId));
}
