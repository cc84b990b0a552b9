import { alikeBy } from '../../core/customer/doubles.ts';
import { type AgreedTogether, agreeApart, agreeTogether } from '../consents.ts';
import type { Context, Handlers } from '../context.ts';
import { foldPhone, foldText } from '../fold.ts';
import { newId } from '../id.ts';
import { signedIn } from '../people.ts';
import { badInput, notFound, Refusal } from '../refusal.ts';
import type { CustomerRow } from '../tables.ts';

/** What went over in a joining, by id, so that it can go back. */
interface Moved {
  readonly owned: readonly string[];
  /** Ownerships that ended, since the other entry owns the same car. */
  readonly ended: readonly string[];
  readonly orders: readonly string[];
  readonly paid: readonly string[];
  /** Entries that were joined into the one that went. */
  readonly joined: readonly string[];
  readonly consents?: AgreedTogether | null;
}

const inside = (text: string) => `%${text.replace(/[%_]/g, '')}%`;
const MOST_LOOKED_AT = 200;
const MOST_SHOWN = 5;
/** So many of a number's last digits are looked for; the rest is judged afterwards. */
const TAIL = 6;

/** Entries worth comparing: those that hold the longest part of the name, the tail of a number, or the e-mail. */
async function near(context: Context, name: string, phones: readonly string[], email: string) {
  // By the same parts as names are compared by: a comma behind a surname belongs to none.
  const longest = name.split(/[^\p{L}\p{N}]+/u).reduce((long, part) => (part.length > long.length ? part : long), '');
  const tails = phones.flatMap((digits) => (digits.length >= TAIL ? [digits.slice(-TAIL)] : []));
  if (longest.length < 2 && tails.length === 0 && email === '') return [];
  return context.tx
    .selectFrom('customer')
    .selectAll()
    .where('joined_into', 'is', null)
    .where((on) =>
      on.or([
        ...(longest.length < 2 ? [] : [on('find_name', 'like', inside(longest))]),
        ...tails.flatMap((tail) => [on('find_phone', 'like', inside(tail)), on('find_phone2', 'like', inside(tail))]),
        ...(email === '' ? [] : [on(on.fn('lower', ['email']), '=', email)]),
      ]),
    )
    .limit(MOST_LOOKED_AT)
    .execute();
}

/** An entry at the revision that was seen. Throws not-found, changed-meanwhile, or bad-input for one that is joined already. */
async function entry(context: Context, field: string, id: string, revision: number): Promise<CustomerRow> {
  const row = await context.tx.selectFrom('customer').selectAll().where('id', '=', id).executeTakeFirst();
  if (!row) throw notFound('customer', id);
  if (row.joined_into !== null) throw badInput(field, 'joined-already');
  if (row.revision !== revision)
    throw new Refusal({
      ...{ code: 'changed-meanwhile', what: 'customer', id, revision: row.revision },
      ...{ now: { name: row.name }, yours: {} },
    });
  return row;
}

/** What is still to happen with an entry: cars it owns now, orders without an invoice, entries joined into it. */
async function toMove(context: Context, fromId: string, intoId: string): Promise<Moved> {
  const { tx } = context;
  const ownedNow = (id: string) =>
    tx
      .selectFrom('car_owner')
      .select(['id', 'car_id'])
      .where('customer_id', '=', id)
      .where('to_day', 'is', null)
      .execute();
  const [mine, theirs] = [await ownedNow(fromId), new Set((await ownedNow(intoId)).map((row) => row.car_id))];
  const open = (column: 'customer_id' | 'payer_id') =>
    tx
      .selectFrom('work_order')
      .select('id')
      .where(column, '=', fromId)
      .where((on) =>
        on.not(
          on.exists(
            on
              .selectFrom('paper')
              .select('paper.id')
              .whereRef('paper.work_order_id', '=', 'work_order.id')
              .where('paper.kind', '=', 'invoice'),
          ),
        ),
      )
      .execute();
  const ids = (rows: readonly { id: string }[]) => rows.map((row) => row.id);
  return {
    owned: ids(mine.filter((row) => !theirs.has(row.car_id))),
    ended: ids(mine.filter((row) => theirs.has(row.car_id))),
    orders: ids(await open('customer_id')),
    paid: ids(await open('payer_id')),
    joined: ids(await tx.selectFrom('customer').select('id').where('joined_into', '=', fromId).execute()),
  };
}

async function noteJoin(context: Context, fromId: string, intoId: string, what: 'joined' | 'parted', moved: unknown) {
  const id = newId();
  await context.write.insert('customer_join', {
    ...{ id, from_id: fromId, into_id: intoId, what, moved: JSON.stringify(moved) },
    ...{ person_id: signedIn(context).id, at: context.now },
  });
  return id;
}

/** Gives rows that stand with one entry to another; what somebody gave to a third one meanwhile stays there. */
async function give(context: Context, moved: Moved, fromId: string, toId: string, stillWith: boolean): Promise<void> {
  const { tx, write } = context;
  for (const id of moved.owned) {
    const row = await tx.selectFrom('car_owner').select('customer_id').where('id', '=', id).executeTakeFirst();
    if (!stillWith || row?.customer_id === fromId) await write.update('car_owner', id, { customer_id: toId });
  }
  for (const [column, ids] of [
    ['customer_id', moved.orders],
    ['payer_id', moved.paid],
  ] as const)
    for (const id of ids) {
      const row = await tx.selectFrom('work_order').select(column).where('id', '=', id).executeTakeFirst();
      if (!stillWith || row?.[column] === fromId) await write.update('work_order', id, { [column]: toId });
    }
}

export const customerJoinHandlers: Handlers = {
  'customer.doubles': async ({ name, phones, email, exceptId }, context) => {
    const typed = {
      name: foldText(name),
      phones: phones.map(foldPhone).filter((digits) => digits !== ''),
      email: email.toLowerCase(),
    };
    const found = (await near(context, typed.name, typed.phones, typed.email))
      .filter((row) => row.id !== exceptId)
      .map((row) => {
        const known = {
          name: row.find_name,
          phones: [row.find_phone, row.find_phone2],
          email: row.email.toLowerCase(),
        };
        return { row, by: alikeBy(typed, known) };
      })
      .filter(({ by }) => by.length > 0)
      .sort((a, b) => b.by.length - a.by.length || a.row.find_name.localeCompare(b.row.find_name))
      .slice(0, MOST_SHOWN);
    const rows = [];
    for (const { row, by } of found) {
      const cars = await context.tx
        .selectFrom('car')
        .innerJoin('car_owner', 'car_owner.car_id', 'car.id')
        .select(['car.plate', 'car.words'])
        .where('car_owner.customer_id', '=', row.id)
        .where('car_owner.to_day', 'is', null)
        .execute();
      const last = await context.tx
        .selectFrom('work_order')
        .select(({ fn }) => fn.max('opened_at').as('at'))
        .where('customer_id', '=', row.id)
        .executeTakeFirst();
      rows.push({
        ...{ id: row.id, revision: row.revision, name: row.name, phone: row.phone, email: row.email, by },
        cars: cars.map((car) => `${car.plate} ${car.words}`.trim()),
        lastVisit: last?.at ?? null,
      });
    }
    return { rows };
  },
  'customer.join': async ({ fromId, fromRevision, intoId, intoRevision }, context) => {
    if (fromId === intoId) throw badInput('intoId', 'same-row-twice');
    const from = await entry(context, 'fromId', fromId, fromRevision);
    const into = await entry(context, 'intoId', intoId, intoRevision);
    const moved = await toMove(context, fromId, intoId);
    await give(context, moved, fromId, intoId, false);
    for (const id of moved.ended) await context.write.update('car_owner', id, { to_day: context.today });
    for (const id of moved.joined) await context.write.update('customer', id, { joined_into: intoId });
    await context.write.update('customer', fromId, { joined_into: intoId, revision: from.revision + 1 });
    const consents = await agreeTogether(context, from, into);
    await context.write.update('customer', intoId, { revision: into.revision + 1 });
    const joinId = await noteJoin(context, fromId, intoId, 'joined', { ...moved, consents });
    return { joinId, cars: moved.owned.length + moved.ended.length, orders: moved.orders.length };
  },
  'customer.part': async ({ joinId }, context) => {
    const { tx, write } = context;
    const join = await tx.selectFrom('customer_join').selectAll().where('id', '=', joinId).executeTakeFirst();
    if (join?.what !== 'joined') throw notFound('customer_join', joinId);
    const last = await tx
      .selectFrom('customer_join')
      .select('id')
      .where('from_id', '=', join.from_id)
      .orderBy('at', 'desc')
      .orderBy('id', 'desc')
      .executeTakeFirst();
    const from = await tx.selectFrom('customer').selectAll().where('id', '=', join.from_id).executeTakeFirstOrThrow();
    if (from.joined_into === null || last?.id !== joinId) throw badInput('joinId', 'parted-already');
    // Where the other entry was itself joined into a third, what went over stands there now.
    const holder = from.joined_into;
    const moved = JSON.parse(join.moved) as Moved;
    await give(context, moved, holder, from.id, true);
    for (const id of moved.ended) await write.update('car_owner', id, { to_day: null });
    for (const id of moved.joined) {
      const row = await tx.selectFrom('customer').select('joined_into').where('id', '=', id).executeTakeFirst();
      if (row?.joined_into === holder) await write.update('customer', id, { joined_into: from.id });
    }
    await write.update('customer', from.id, { joined_into: null, revision: from.revision + 1 });
    const into = await tx.selectFrom('customer').selectAll().where('id', '=', holder).executeTakeFirstOrThrow();
    await agreeApart(context, into, moved.consents ?? null);
    await write.update('customer', holder, { revision: into.revision + 1 });
    return { id: await noteJoin(context, from.id, holder, 'parted', moved) };
  },
};
