import type { OutputOf, ParsedInputOf } from '../../core/contract/index.ts';
import { currencyDigits, formatMoney } from '../../core/money/currency.ts';
import { money } from '../../core/money/money.ts';
import { civilDateOf } from '../../core/time/instant.ts';
import type { Context, Handlers } from '../context.ts';

import { settingsOf } from '../people.ts';
import { NO_CAR } from './desk.ts';

type Piece = OutputOf<'export.rows'>;
type Asked = Pick<ParsedInputOf<'export.rows'>, 'after' | 'most'>;

const nextOf = (rows: readonly { readonly id: string }[], most: number): string | null =>
  rows.length === most ? (rows.at(-1)?.id ?? null) : null;

async function customers({ tx }: Context, { after, most }: Asked): Promise<Piece> {
  const rows = await tx
    .selectFrom('customer')
    .selectAll()
    .where('id', '>', after)
    .where('joined_into', 'is', null)
    .orderBy('id')
    .limit(most)
    .execute();
  return {
    columns: [
      ...['customer-key', 'customer-name', 'customer-phone', 'customer-phone2', 'customer-email', 'customer-street'],
      ...['customer-town', 'customer-country', 'customer-tax-number', 'customer-note'],
    ],
    figures: [],
    rows: rows.map((row) => {
      const [street = '', town = '', ...more] = JSON.parse(row.address) as string[];
      return [
        ...[row.id, row.name, row.phone, row.phone2, row.email, street],
        ...[town, more.join(', '), row.tax_number, row.note],
      ];
    }),
    next: nextOf(rows, most),
  };
}

async function cars({ tx }: Context, { after, most }: Asked): Promise<Piece> {
  const rows = await tx
    .selectFrom('car')
    .leftJoin('car_owner', (on) => on.onRef('car_owner.car_id', '=', 'car.id').on('car_owner.to_day', 'is', null))
    .leftJoin('customer', 'customer.id', 'car_owner.customer_id')
    .select(['car.id', 'plate', 'vin', 'words', 'year', 'car.note', 'customer.id as owner', 'customer.name'])
    .where('car.id', '>', after)
    .where('car.id', '<>', NO_CAR)
    .orderBy('car.id')
    .limit(most)
    .execute();
  return {
    columns: [
      ...['car-key', 'car-plate', 'car-vin', 'car-model', 'car-year', 'car-note', 'customer-key', 'customer-name'],
    ],
    figures: ['car-year'],
    rows: rows.map((row) => [
      ...[row.id, row.plate, row.vin, row.words, row.year === null ? '' : String(row.year), row.note],
      ...[row.owner ?? '', row.name ?? ''],
    ]),
    next: nextOf(rows, most),
  };
}

/** Visits from before, and those of this program that were invoiced. */
async function visits(context: Context, { after, most }: Asked): Promise<Piece> {
  const { tx } = context;
  const { zone } = settingsOf(context);
  const past = tx
    .selectFrom('past_visit')
    .select(['id', 'car_id', 'on_day', 'mileage', 'words', 'amount'])
    .where('id', '>', after);
  const rows = await past.orderBy('id').limit(most).execute();
  const own = await tx
    .selectFrom('work_order')
    .innerJoin('paper', (on) => on.onRef('paper.work_order_id', '=', 'work_order.id').on('paper.kind', '=', 'invoice'))
    .select(['work_order.id', 'car_id', 'opened_at', 'mileage_in', 'complaint', 'paper.gross'])
    .where('work_order.id', '>', after)
    .where('car_id', '<>', NO_CAR)
    .orderBy('work_order.id')
    .limit(most)
    .execute();
  const all = [
    ...rows,
    ...own.map((row) => ({
      ...{ id: row.id, car_id: row.car_id, on_day: civilDateOf(row.opened_at, zone), mileage: row.mileage_in },
      ...{ words: row.complaint, amount: row.gross },
    })),
  ]
    .toSorted((a, b) => (a.id < b.id ? -1 : 1))
    .slice(0, most);
  const plates = new Map(
    (
      await tx
        .selectFrom('car')
        .select(['id', 'plate', 'vin'])
        .where('id', 'in', ['', ...new Set(all.map((row) => row.car_id))])
        .execute()
    ).map((row) => [row.id, row]),
  );
  const sum = sumOf(context);
  return {
    columns: ['car-key', 'car-plate', 'car-vin', 'visit-on', 'visit-mileage', 'visit-words', 'visit-amount'],
    figures: ['visit-mileage', 'visit-amount'],
    rows: all.map((row) => [
      ...[row.car_id, plates.get(row.car_id)?.plate ?? '', plates.get(row.car_id)?.vin ?? '', row.on_day],
      ...[row.mileage === null ? '' : String(row.mileage), row.words, sum(row.amount)],
    ]),
    next: nextOf(all, most),
  };
}

async function orders(context: Context, { after, most }: Asked): Promise<Piece> {
  const { zone } = settingsOf(context);
  const rows = await context.tx
    .selectFrom('work_order')
    .innerJoin('customer', 'customer.id', 'work_order.customer_id')
    .innerJoin('car', 'car.id', 'work_order.car_id')
    .leftJoin('paper', (on) => on.onRef('paper.work_order_id', '=', 'work_order.id').on('paper.kind', '=', 'invoice'))
    .select(['work_order.id', 'work_order.number', 'opened_at', 'customer.name', 'plate', 'words', 'complaint'])
    .select(['mileage_in', 'handed_over_at', 'paper.number as invoice', 'net', 'tax', 'gross'])
    .where('work_order.id', '>', after)
    .orderBy('work_order.id')
    .limit(most)
    .execute();
  const sum = sumOf(context);
  return {
    columns: [
      ...[
        'order',
        'opened',
        'customer',
        'plate',
        'car',
        'complaint',
        'mileage',
        'handed over',
        'invoice',
        'net',
        'tax',
      ],
      'gross',
    ],
    figures: ['order', 'mileage', 'invoice', 'net', 'tax', 'gross'],
    rows: rows.map((row) => [
      ...[String(row.number), civilDateOf(row.opened_at, zone), row.name, row.plate, row.words, row.complaint],
      ...[row.mileage_in === null ? '' : String(row.mileage_in)],
      ...[row.handed_over_at === null ? '' : civilDateOf(row.handed_over_at, zone)],
      ...[row.invoice === null ? '' : String(row.invoice), sum(row.net), sum(row.tax), sum(row.gross)],
    ]),
    next: nextOf(rows, most),
  };
}

/** A sum as a figure with the shop's own decimal sign and nothing between thousands. */
function sumOf(context: Context): (amount: number | null) => string {
  const { currency, decimal } = settingsOf(context);
  return (amount) =>
    amount === null ? '' : formatMoney(money(amount), currencyDigits(currency) ?? 2, { decimal, group: '' });
}

const KINDS = { customers, cars, visits, orders };

export const exportHandlers: Handlers = {
  'export.rows': ({ kind, ...asked }, context) => KINDS[kind](context, asked),
};
