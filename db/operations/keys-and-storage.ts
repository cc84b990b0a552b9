import type { z } from 'zod';
import type { atTheDoor } from '../../core/contract/desk.ts';
import { money } from '../../core/money/money.ts';
import { NOTHING_ADDED, rulesOf } from '../../core/money/shop-rules.ts';
import { reckonSheet } from '../../core/money/totals.ts';
import { storageDays } from '../../core/order/storage.ts';
import { civilDateOf } from '../../core/time/instant.ts';
import type { Context, Handlers } from '../context.ts';
import { newId } from '../id.ts';
import { settingsOf, signedIn } from '../people.ts';
import { notFound } from '../refusal.ts';
import { readyNotice } from './message.ts';

async function orderRow(context: Context, orderId: string) {
  const row = await context.tx.selectFrom('work_order').selectAll().where('id', '=', orderId).executeTakeFirst();
  if (!row) throw notFound('order', orderId);
  return row;
}

export const keysAndStorageHandlers: Handlers = {
  'key.handOut': async ({ orderId, toWhom, words }, context) => {
    await orderRow(context, orderId);
    const id = newId();
    await context.write.insert('key_out', {
      ...{ id, work_order_id: orderId, to_whom: toWhom, words },
      ...{ person_id: signedIn(context).id, at: context.now },
    });
    return { id };
  },
  'key.list': async ({ orderId }, context) => {
    const rows = await context.tx
      .selectFrom('key_out')
      .innerJoin('person', 'person.id', 'key_out.person_id')
      .selectAll('key_out')
      .select('person.name as by')
      .where('work_order_id', '=', orderId)
      .orderBy('key_out.at')
      .orderBy('key_out.id')
      .execute();
    return { rows: rows.map(({ id, at, to_whom: toWhom, words, by }) => ({ id, at, toWhom, words, by })) };
  },
  'storage.get': async ({ orderId, on }, context) => {
    const order = await orderRow(context, orderId);
    const settings = settingsOf(context);
    const door = JSON.parse(order.door) as Partial<z.output<typeof atTheDoor>>;
    const told = door.storage ?? null;
    const fetched = order.handed_over_at === null ? null : civilDateOf(order.handed_over_at, settings.zone);
    const until = on ?? fetched ?? context.today;
    const notice = await readyNotice(context, orderId);
    const none = { firstCharged: null, days: 0, net: 0, tax: 0, gross: 0 };
    const common = {
      ...{ told: told !== null, perDay: told?.perDay ?? 0, freeWorkingDays: told?.freeWorkingDays ?? 0 },
      ...{ notice, until },
    };
    if (told === null || notice === null || settings.workingWeekdays.length === 0) return { ...common, ...none };
    const { firstCharged, days } = storageDays(notice, until, {
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
    const totals = reckonSheet(
      {
        jobs: [
          {
            id: 'storage',
            given: false,
            fixedPrice: undefined,
            lines: [{ ...fee, given: false, discount: undefined }],
          },
        ],
        discounts: [],
        exempt: payer.tax_exempt !== '',
      },
      { ...rulesOf(settings), ...NOTHING_ADDED },
    );
    return { ...common, firstCharged, days, net: totals.net, tax: totals.tax, gross: totals.gross };
  },
};
