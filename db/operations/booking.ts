import { type BayTime, clashesWith, personClashesWith } from '../../core/order/bay-clash.ts';
import { addDays } from '../../core/time/civil.ts';
import { type Booked, bookedBetween, type InternalBooked, internalBetween } from '../booked.ts';
import type { Context, Handlers } from '../context.ts';
import { newId } from '../id.ts';
import { badInput, notFound } from '../refusal.ts';
import type { BookingRow } from '../tables.ts';
import { openSheet } from './on-the-sheet.ts';

interface Place {
  readonly bayId: string;
  readonly day: string;
  readonly from: string;
  readonly hours: number;
  readonly personId?: string | null | undefined;
}

/** A place as columns; who does it stays when it is not named. Throws not-found. */
async function placeColumns(context: Context, place: Place): Promise<Partial<BookingRow>> {
  const bay = await context.tx.selectFrom('bay').select('id').where('id', '=', place.bayId).executeTakeFirst();
  if (!bay) throw notFound('bay', place.bayId);
  if (place.personId) {
    const person = await context.tx
      .selectFrom('person')
      .select('id')
      .where('id', '=', place.personId)
      .executeTakeFirst();
    if (!person) throw notFound('person', place.personId);
  }
  return {
    bay_id: bay.id,
    day: place.day,
    from_time: place.from,
    hours: place.hours,
    ...(place.personId === undefined ? {} : { person_id: place.personId }),
  };
}

/** A new booking, of an order or of the shop's own. Throws not-found for a bay or a person that is not there. */
export async function addBooking(
  context: Context,
  place: Place,
  of: { readonly orderId: string } | { readonly words: string },
): Promise<string> {
  const id = newId();
  const internal = 'words' in of;
  await context.write.insert('booking', {
    ...{ id, work_order_id: internal ? null : of.orderId, bay_id: '', day: '', from_time: '', hours: 0 },
    ...{ revision: internal ? 1 : null, words: internal ? of.words : null, person_id: null },
    ...{ no_show_at: null, taken_out: null },
    ...(await placeColumns(context, place)),
  });
  return id;
}

type Any = Booked | InternalBooked;
const keyOf = (row: Any) => ('orderId' in row ? row.orderId : row.id);
const asTime = (row: Any) => ({ ...row, orderId: keyOf(row) });

/** All that takes up a bay or a person between two days: no-shows and cars that are gone do not. */
const standing = (rows: readonly Booked[], internal: readonly InternalBooked[]) => [
  ...rows.filter((row) => row.counts).map(asTime),
  ...internal.map(asTime),
];

/** As far as a booking may reach from the day that it begins. */
const FAR = 120;

/** The others that share a bay or a person with some day of a booking, each once. */
function sharing<R extends BayTime>(clashes: (one: R, all: readonly R[]) => R[], key: string, all: readonly R[]): R[] {
  const found = all.filter((row) => row.orderId === key).flatMap((mine) => clashes(mine, all));
  return found.filter((row, at) => found.findIndex((other) => other.orderId === row.orderId) === at);
}

/** What a booking clashes with, as it is told after a change. */
async function clashesOf(context: Context, key: string, day: string) {
  const to = addDays(day, FAR);
  const all = standing(await bookedBetween(context, day, to), await internalBetween(context, day, to));
  const told = (over: 'bay' | 'person') => (row: (typeof all)[number]) => ({
    orderId: row.orderId,
    number: 'number' in row ? row.number : null,
    plate: 'plate' in row ? row.plate : '',
    words: 'words' in row ? row.words : row.car,
    from: row.from,
    hours: row.hours,
    over,
  });
  return [
    ...sharing(clashesWith, key, all).map(told('bay')),
    ...sharing(personClashesWith, key, all).map(told('person')),
  ];
}

const internalRow = async (context: Context, id: string) => {
  const row = await context.tx.selectFrom('booking').selectAll().where('id', '=', id).executeTakeFirst();
  if (!row || row.work_order_id !== null || row.taken_out === 1) throw notFound('booking', id);
  return row;
};

const shown = (row: BookingRow) => ({
  bayId: row.bay_id,
  day: row.day,
  from: row.from_time,
  hours: row.hours,
  personId: row.person_id,
  ...(row.words === null ? {} : { words: row.words }),
});

export const bookingHandlers: Handlers = {
  'booking.change': async ({ orderId, revision, booking }, context) => {
    await openSheet(context, orderId);
    const before = await context.tx
      .selectFrom('booking')
      .selectAll()
      .where('work_order_id', '=', orderId)
      .where('no_show_at', 'is', null)
      .executeTakeFirst();
    const next = await context.write.edit('work_order', orderId, revision, {}, booking, () =>
      before ? shown(before) : null,
    );
    if (before) await context.write.update('booking', before.id, await placeColumns(context, booking));
    else await addBooking(context, booking, { orderId });
    return { id: orderId, revision: next, clashes: await clashesOf(context, orderId, booking.day) };
  },
  'booking.noShow': async ({ orderId, revision, came }, context) => {
    const order = await openSheet(context, orderId);
    if (order.arrived_at !== null) throw badInput('orderId', 'arrived-already');
    const rows = await context.tx
      .selectFrom('booking')
      .selectAll()
      .where('work_order_id', '=', orderId)
      .orderBy('day', 'desc')
      .execute();
    const standingRow = rows.find((row) => row.no_show_at === null);
    const row = came ? (standingRow ? undefined : rows[0]) : standingRow;
    if (!row) throw notFound('booking', orderId);
    if (!came && row.day > context.today) throw badInput('orderId', 'in-the-future');
    const next = await context.write.edit('work_order', orderId, revision, {}, { came }, () => shown(row));
    await context.write.update('booking', row.id, { no_show_at: came ? null : context.now });
    return { id: orderId, revision: next };
  },
  'booking.addInternal': async ({ booking }, context) => {
    const id = await addBooking(context, booking, { words: booking.words });
    return { id, revision: 1, clashes: await clashesOf(context, id, booking.day) };
  },
  'booking.changeInternal': async ({ id, revision, booking }, context) => {
    await internalRow(context, id);
    const columns = { ...(await placeColumns(context, booking)), words: booking.words };
    const next = await context.write.edit('booking', id, revision, columns, booking, shown);
    return { id, revision: next, clashes: await clashesOf(context, id, booking.day) };
  },
  'booking.takeOut': async ({ id, revision }, context) => {
    await internalRow(context, id);
    return { id, revision: await context.write.edit('booking', id, revision, { taken_out: 1 }, { id }, shown) };
  },
  'booking.list': async ({ from, to }, context) => {
    if (to < from) throw badInput('to', 'before-from');
    const rows = await bookedBetween(context, from, to);
    const internal = await internalBetween(context, from, to);
    const all = standing(rows, internal);
    const clashes = (key: string) => [
      ...new Set(
        [...sharing(clashesWith, key, all), ...sharing(personClashesWith, key, all)].map((row) => row.orderId),
      ),
    ];
    const days = new Map<string, number>();
    for (const row of all) days.set(row.day, (days.get(row.day) ?? 0) + row.hours);
    const bays = await context.tx.selectFrom('bay').select(['id', 'name', 'words']).orderBy('place').execute();
    return {
      bays,
      rows: rows.map(({ counts: _, ...row }) => ({
        ...row,
        clashes: row.noShowAt === null ? clashes(row.orderId) : [],
      })),
      internal: internal.map((row) => ({ ...row, clashes: clashes(row.id) })),
      days: [...days].map(([day, hours]) => ({ day, hours })).sort((a, b) => a.day.localeCompare(b.day)),
    };
  },
};
