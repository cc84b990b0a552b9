import type { RowDraft } from '../../core/bring-in/row.ts';
import { civilDateOf } from '../../core/time/instant.ts';
import type { Context } from '../context.ts';
import { foldPlate, foldText } from '../fold.ts';
import { settingsOf } from '../people.ts';
import { carKeys, customerKeys, visitKey } from './identity.ts';

interface KnownCar {
  readonly id: string;
  readonly vin: string;
  ownerId: string | null;
}

/** What the shop knows of all that a piece of a file names, and what earlier rows of the piece made. */
export interface Known {
  /** Rows whose every making is still there. */
  readonly hashes: ReadonlySet<string>;
  readonly customerByFileKey: Map<string, string>;
  readonly customerByKey: Map<string, string>;
  /** By folded name alone. */
  readonly named: Map<string, Set<string>>;
  readonly carByFileKey: Map<string, string>;
  readonly carByKey: Map<string, string>;
  readonly cars: Map<string, KnownCar>;
  /** By car. */
  readonly visits: Map<string, Set<string>>;
}

export interface HashedDraft extends RowDraft {
  readonly hash: string;
}

const filled = (values: readonly (string | null | undefined)[]): string[] => [
  ...new Set(values.filter((value): value is string => typeof value === 'string' && value !== '')),
];
// A list in a question may not be empty.
const orNone = (values: readonly string[]): readonly string[] => (values.length === 0 ? ['\0'] : values);

/** Reads what is known of a piece, in a handful of questions. */
export async function readKnown(context: Context, drafts: readonly HashedDraft[]): Promise<Known> {
  const known: Known = {
    hashes: await standingHashes(context, drafts),
    customerByFileKey: await byFileKey(context, 'customer', filled(drafts.map((each) => each.customer?.key))),
    customerByKey: new Map(),
    named: new Map(),
    carByFileKey: await byFileKey(context, 'car', filled(drafts.map((each) => each.car?.key))),
    carByKey: new Map(),
    cars: new Map(),
    visits: new Map(),
  };
  await customers(context, drafts, known);
  await cars(context, drafts, known);
  return known;
}

/** Remembers a customer by all that tells them. */
export function noteCustomer(known: Known, id: string, name: string, keys: readonly string[]): void {
  for (const key of keys) if (!known.customerByKey.has(key)) known.customerByKey.set(key, id);
  const folded = foldText(name);
  known.named.set(folded, (known.named.get(folded) ?? new Set()).add(id));
}

async function customers({ tx }: Context, drafts: readonly HashedDraft[], known: Known): Promise<void> {
  const names = filled(drafts.map((each) => each.customer && foldText(each.customer.name)));
  const rows = await tx
    .selectFrom('customer')
    .select(['id', 'name', 'phone', 'phone2', 'email', 'address', 'joined_into'])
    .where('find_name', 'in', orNone(names))
    .orderBy('made_at')
    .execute();
  for (const row of rows) {
    const address = JSON.parse(row.address) as string[];
    noteCustomer(known, row.joined_into ?? row.id, row.name, customerKeys({ ...row, address }, { address: true }));
  }
}

async function cars(context: Context, drafts: readonly HashedDraft[], known: Known): Promise<void> {
  const { tx } = context;
  const vins = filled(drafts.map((each) => each.car?.vin));
  const plates = filled(drafts.map((each) => each.car && foldPlate(each.car.plate)));
  const rows = await tx
    .selectFrom('car')
    .leftJoin('car_owner', (on) => on.onRef('car_owner.car_id', '=', 'car.id').on('car_owner.to_day', 'is', null))
    .leftJoin('customer', 'customer.id', 'car_owner.customer_id')
    .select(['car.id', 'car.vin', 'car.plate', 'customer.id as owner', 'customer.joined_into as into'])
    .where((on) =>
      on.or([
        on('car.vin', 'in', orNone(vins)),
        on('car.find_plate', 'in', orNone(plates)),
        on('car.id', 'in', orNone([...known.carByFileKey.values()])),
      ]),
    )
    .execute();
  for (const row of rows) {
    known.cars.set(row.id, { id: row.id, vin: row.vin, ownerId: row.into ?? row.owner });
    for (const key of carKeys(row)) known.carByKey.set(key, row.id);
  }
  const visits = await tx
    .selectFrom('past_visit')
    .select(['car_id', 'on_day', 'mileage', 'words'])
    .where('car_id', 'in', orNone(rows.map((row) => row.id)))
    .execute();
  // An invoiced order of this shop is what it writes out as a visit.
  const orders = await tx
    .selectFrom('work_order')
    .innerJoin('paper', (on) => on.onRef('paper.work_order_id', '=', 'work_order.id').on('paper.kind', '=', 'invoice'))
    .select(['car_id', 'opened_at', 'mileage_in as mileage', 'complaint as words'])
    .where('car_id', 'in', orNone(rows.map((row) => row.id)))
    .execute();
  const { zone } = settingsOf(context);
  for (const row of [...visits, ...orders.map((row) => ({ ...row, on_day: civilDateOf(row.opened_at, zone) }))])
    known.visits.set(row.car_id, (known.visits.get(row.car_id) ?? new Set()).add(visitKey({ ...row, on: row.on_day })));
}

/** What a file called a customer or a car when it came, as far as it is still here; what this shop wrote out, by its id. */
async function byFileKey({ tx }: Context, table: 'customer' | 'car', keys: readonly string[]) {
  const rows = await tx
    .selectFrom('import_made')
    .select(['file_key', 'made_id'])
    .where('file_key', 'in', orNone(keys))
    .where('made_table', '=', table)
    .orderBy('id')
    .execute();
  const ids = orNone(rows.map((row) => row.made_id));
  const here = new Set((await tx.selectFrom(table).select('id').where('id', 'in', ids).execute()).map((row) => row.id));
  const own =
    table === 'customer'
      ? await tx.selectFrom('customer').select(['id', 'joined_into as into']).where('id', 'in', orNone(keys)).execute()
      : await tx.selectFrom('car').select(['id', 'id as into']).where('id', 'in', orNone(keys)).execute();
  return new Map([
    ...rows.filter((row) => here.has(row.made_id)).map((row): [string, string] => [row.file_key ?? '', row.made_id]),
    ...own.map(({ id, into }): [string, string] => [id, into ?? id]),
  ]);
}

async function standingHashes({ tx }: Context, drafts: readonly HashedDraft[]): Promise<Set<string>> {
  const rows = await tx
    .selectFrom('import_made')
    .select(['row_hash', 'made_table', 'made_id'])
    .where('row_hash', 'in', orNone(drafts.map((each) => each.hash)))
    .execute();
  const here = new Set<string>();
  for (const table of ['customer', 'car', 'car_owner', 'past_visit'] as const) {
    const ids = rows.filter((row) => row.made_table === table).map((row) => row.made_id);
    for (const { id } of await tx.selectFrom(table).select('id').where('id', 'in', orNone(ids)).execute()) here.add(id);
  }
  const gone = new Set(rows.filter((row) => !here.has(row.made_id)).map((row) => row.row_hash));
  return new Set(rows.map((row) => row.row_hash).filter((hash) => !gone.has(hash)));
}
