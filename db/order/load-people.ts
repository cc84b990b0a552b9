import type { Context } from '../context.ts';
import type { WorkOrderRow } from '../tables.ts';
import * as questions from './load-questions.ts';
import { eachOf } from './load-rows.ts';

const missing = (table: string, id: string) => new Error(`${table} ${id} is referred to and not there`);

/** Who brings and who pays for these orders. */
export async function peopleOfOrders({ tx }: Context, orders: readonly WorkOrderRow[]) {
  const ids = orders.flatMap((order) => [order.customer_id, ...(order.payer_id === null ? [] : [order.payer_id])]);
  const rows = await eachOf([...new Set(ids)], (some) => questions.customers(tx, { ids: some }));
  const kept = new Map(rows.map((row) => [row.id, row]));
  return (id: string) => {
    const customer = kept.get(id);
    if (!customer) throw missing('customer', id);
    return customer;
  };
}

/** The cars of these orders, each with the newest reading of its clock. */
export async function carsWithReadings({ tx }: Context, orders: readonly WorkOrderRow[]) {
  const ids = [...new Set(orders.map((order) => order.car_id))];
  const rows = await eachOf(ids, (some) => questions.cars(tx, { ids: some }));
  const kept = new Map<string, (typeof rows)[number]>(rows.map((row) => [row.id, row]));
  const readings = await eachOf(ids, (some) => questions.readings(tx, { ids: some }));
  // The later one of a car takes the place of the earlier.
  const newest = new Map<string, (typeof readings)[number]>(readings.map((row) => [row.car_id, row]));
  return (id: string) => {
    const car = kept.get(id);
    if (!car) throw missing('car', id);
    return { car, last: newest.get(id) ?? null };
  };
}
