import type { z } from 'zod';
import type { atTheDoor } from '../../core/contract/desk.ts';
import { money } from '../../core/money/money.ts';
import { NOTHING_ADDED, rulesOf } from '../../core/money/shop-rules.ts';
import { reckonSheet } from '../../core/money/totals.ts';
import { storageDays } from '../../core/order/storage.ts';
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

/** The job of the sheet that charges the car's storage; there is one at most. */
export const storageJob = ({ tx }: Context, orderId: string) =>
  tx
    .selectFrom('job')
    .selectAll()
    .where('work_order_id', '=', orderId)
    .where('storage_until', 'is not', null)
    .where('taken_out', '=', 0)
    .where('moved_to', 'is', null)
    .executeTakeFirst();

/**
 * What leaving a car here costs until a day, `on` or the day it is fetched or today. It counts from the ready notice, or
 * from the day that it was agreed where that was later: nothing is charged for days before somebody said what they cost.
 */
export async function storageOf(context: Context, order: WorkOrderRow, on: string | null) {
  const settings = settingsOf(context);
  const told = agreedStorage(order.door);
  const fetched = order.handed_over_at === null ? null : civilDateOf(order.handed_over_at, settings.zone);
  const until = on ?? fetched ?? context.today;
  const notice = await readyNotice(context, order.id);
  const none = { firstCharged: null, days: 0, net: 0, tax: 0, gross: 0 };
  const common = {
    ...{ told: told !== null, perDay: told?.perDay ?? 0, freeWorkingDays: told?.freeWorkingDays ?? 0 },
    ...{ agreedAt: told === null ? null : order.storage_agreed_at, notice, until },
    chargedUntil: (await storageJob(context, order.id))?.storage_until ?? null,
  };
  if (told === null || notice === null || settings.workingWeekdays.length === 0) return { ...common, ...none };
  const agreedOn = order.storage_agreed_at === null ? notice : civilDateOf(order.storage_agreed_at, settings.zone);
  const { firstCharged, days } = storageDays([agreedOn, notice].toSorted().at(-1) ?? notice, until, {
    freeWorkingDays: told.freeWorkingDays,
    workingWeekdays: settings.workingWeekdays,
    collectionDayCharged: settings.storageOnCollectionDay,
  });
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
  return { ...common, firstCharged, days, net: totals.net, tax: totals.tax, gross: totals.gross };
}
