import type { z } from 'zod';
import type { atTheDoor } from '../../core/contract/desk.ts';
import { money } from '../../core/money/money.ts';
import { NOTHING_ADDED, rulesOf } from '../../core/money/shop-rules.ts';
import { reckonSheet } from '../../core/money/totals.ts';
import { daysAfter, storageDays } from '../../core/order/storage.ts';
import { civilDateOf } from '../../core/time/instant.ts';
import type { Context } from '../context.ts';
import { readyNotice } from '../operations/message.ts';
import { settingsOf } from '../people.ts';
import type { WorkOrderRow } from '../tables.ts';

type Door = Partial<z.output<typeof atTheDoor>>;
export type StorageAgreed = NonNullable<Door['storage']>;

/** What was agreed at the door that leaving the car here costs; null where nothing was. */
export const agreedStorage = (door: string): StorageAgreed | null => (JSON.parse(door) as Door).storage ?? null;

/**
 * When storage was agreed, as a column beside the door that is written now: at the first writing of a price, and anew when
 * it is another one. Whatever else of the door changes leaves it as it was.
 */
export function agreedAt(
  before: Pick<WorkOrderRow, 'door' | 'storage_agreed_at'> | null,
  next: Pick<Door, 'storage'>,
  now: number,
): number | null {
  const storage = next.storage ?? null;
  if (storage === null) return null;
  const was = before === null ? null : agreedStorage(before.door);
  const same = was?.perDay === storage.perDay && was.freeWorkingDays === storage.freeWorkingDays;
  return same ? (before?.storage_agreed_at ?? null) : now;
}

/** The order of the visit whose storage an order is about: its own, or the one that it was opened to charge. */
export async function visitOf({ tx }: Context, order: WorkOrderRow): Promise<WorkOrderRow> {
  if (order.storage_of === null) return order;
  return tx.selectFrom('work_order').selectAll().where('id', '=', order.storage_of).executeTakeFirstOrThrow();
}

/** The orders that charge the storage of a visit: its own first, then those that were opened for it, the oldest first. */
export async function storageOrders({ tx }: Context, visitId: string) {
  const of = (column: 'work_order.id' | 'work_order.storage_of') =>
    tx
      .selectFrom('work_order')
      .innerJoin('order_balance', 'order_balance.work_order_id', 'work_order.id')
      .select(['work_order.id', 'number', 'cancelled_at', 'handed_over_at', 'revision', 'order_balance.invoiced'])
      .where(column, '=', visitId)
      .orderBy('work_order.id')
      .execute();
  return [...(await of('work_order.id')), ...(await of('work_order.storage_of'))];
}

type StorageOrder = Awaited<ReturnType<typeof storageOrders>>[number];

/** Whether an order charges storage still: the visit's own does, one that was opened for it unless it was called off. */
export const counts = (order: StorageOrder, place: number): boolean => place === 0 || order.cancelled_at === null;

/** The fees for storage on these orders, the oldest first; of one sheet there is one at most. */
async function feesOf({ tx }: Context, orders: readonly StorageOrder[]) {
  const counted = new Map(orders.filter(counts).map((order) => [order.id, order]));
  const rows = await tx
    .selectFrom('job')
    .selectAll()
    .where('work_order_id', 'in', [...counted.keys()])
    .where('storage_until', 'is not', null)
    .where('taken_out', '=', 0)
    .where('moved_to', 'is', null)
    .orderBy('id')
    .execute();
  return rows.map((job) => ({ job, invoiced: counted.get(job.work_order_id)?.invoiced === 1 }));
}

/**
 * What leaving a car here costs until a day, `on` or the day it is fetched or today, less what an invoice charges already.
 * It counts from the ready notice, or from the day that it was agreed where that was later: nothing is charged for days
 * before somebody said what they cost. `order` is that of the visit (see {@link visitOf}).
 */
export async function storageOf(context: Context, order: WorkOrderRow, on: string | null) {
  const settings = settingsOf(context);
  const told = agreedStorage(order.door);
  const fetched = order.handed_over_at === null ? null : civilDateOf(order.handed_over_at, settings.zone);
  const wanted = on ?? fetched ?? context.today;
  // Nothing stands here once it was fetched.
  const until = fetched !== null && wanted > fetched ? fetched : wanted;
  const notice = await readyNotice(context, order.id);
  const orders = await storageOrders(context, order.id);
  const fees = await feesOf(context, orders);
  const standing = fees.find((fee) => !fee.invoiced)?.job ?? null;
  const invoiced = fees.findLast((fee) => fee.invoiced)?.job ?? null;
  const none = { firstCharged: null, days: 0, daysInAll: 0, net: 0, tax: 0, gross: 0 };
  const common = {
    ...{ told: told !== null, perDay: told?.perDay ?? 0, freeWorkingDays: told?.freeWorkingDays ?? 0 },
    ...{ agreedAt: told === null ? null : order.storage_agreed_at, notice, until },
    ...{ orders, standing, chargedUntil: standing?.storage_until ?? null },
    invoicedUntil: invoiced?.storage_until ?? null,
  };
  if (told === null || notice === null || settings.workingWeekdays.length === 0) return { ...common, ...none };
  const agreedOn = order.storage_agreed_at === null ? notice : civilDateOf(order.storage_agreed_at, settings.zone);
  const all = storageDays([agreedOn, notice].toSorted().at(-1) ?? notice, until, {
    freeWorkingDays: told.freeWorkingDays,
    workingWeekdays: settings.workingWeekdays,
    collectionDayCharged: settings.storageOnCollectionDay,
  });
  // Before the last day was kept beside a fee, the day until which it was worked out is the nearest that is known.
  const { firstCharged, days } = daysAfter(all, invoiced?.storage_last ?? invoiced?.storage_until ?? null);
  const payer = await context.tx
    .selectFrom('customer')
    .select('tax_exempt')
    .where('id', '=', order.payer_id ?? order.customer_id)
    .executeTakeFirstOrThrow();
  const fee = { id: 'storage', kind: 'fee' as const, quantity: days * 1000, unitPrice: money(told.perDay) };
  const lines = [{ ...fee, given: false, discount: undefined }];
  const totals = reckonSheet(
    {
      jobs: [{ id: 'storage', given: false, fixedPrice: undefined, lines }],
      discounts: [],
      exempt: payer.tax_exempt !== '',
    },
    { ...rulesOf(settings), ...NOTHING_ADDED },
  );
  return { ...common, firstCharged, days, daysInAll: all.days, net: totals.net, tax: totals.tax, gross: totals.gross };
}
