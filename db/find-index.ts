import { type RawBuilder, sql } from 'kysely';

/** The columns of each find index of schema 4. */
interface Columns {
  customer: 'name' | 'phone' | 'phone2';
  car: 'vin';
  car_plate: 'plate';
  part: 'number' | 'words';
}

/** Fewer characters than these are no piece of anything: only beginnings are found by them. */
export const FEWEST_SIGNS = 3;

/**
 * The condition that a row is among the first `most` of its table that hold a text, of at least three characters, in one
 * of these columns. Columns of numbers end with a point: a text that ends with one asks for their end. SQLite's own.
 */
export function holds<T extends keyof Columns>(
  table: T,
  columns: readonly Columns[T][],
  text: string,
  most: number,
): RawBuilder<boolean> {
  const index = sql.table(`find_${table}`);
  const asked = `{${columns.join(' ')}} : "${text.replaceAll('"', '""')}"`;
  return sql<boolean>`${sql.ref(`${table}.rowid`)} in (select rowid from ${index} where ${index} match ${asked} limit ${most})`;
}
