import { type RawBuilder, sql } from 'kysely';

/** The columns of each find index of schemas 4 and 6. */
interface Columns {
  customer: 'name' | 'phone' | 'phone2';
  car: 'vin';
  car_plate: 'plate';
  part: 'number' | 'words';
  work_order: 'words';
  job: 'words';
}

/** Fewer characters than these are no piece of anything: only beginnings are found by them. */
export const FEWEST_SIGNS = 3;

export type Piece = RawBuilder<unknown>;

/** What an index is asked for: a text of at least three characters in one of these columns. */
export const matching = <T extends keyof Columns>(_table: T, columns: readonly Columns[T][], text: string): string =>
  `{${columns.join(' ')}} : "${text.replaceAll('"', '""')}"`;

/** One or another: asked at once, since each asking of an index has its price. */
export const either = (...matches: readonly string[]): string => matches.join(' OR ');

/** Every row of the index that matches. SQLite's own. */
export function holdingAll(table: keyof Columns, match: string): Piece {
  const index = sql.table(`find_${table}`);
  return sql`select rowid from ${index} where ${index} match ${match}`;
}

/** The same, at most so many. */
export const holding = (table: keyof Columns, match: string, most: number): Piece =>
  sql`${holdingAll(table, match)} limit ${most}`;

/** The same, the newest rows first: what is written down later has the higher number. */
export const holdingNewest = (table: keyof Columns, match: string, most: number): Piece =>
  sql`${holdingAll(table, match)} order by rowid desc limit ${most}`;

/** Above every text that begins with this one. */
export const above = (text: string): string => `${text}\u{10FFFF}`;

/** Rows whose column begins with a text, given with what is above it, by its B-tree; at most so many, where it says. */
export function beginning(table: keyof Columns, column: string, from: string, to: string, most: number | null): Piece {
  const rows = sql`select rowid from ${sql.table(table)} where ${sql.ref(column)} >= ${from} and ${sql.ref(column)} < ${to}`;
  return most === null ? rows : sql`${rows} limit ${most}`;
}

/** The condition that a row of the table is in one of the pieces. */
export const inPieces = (table: keyof Columns, pieces: readonly Piece[]): RawBuilder<boolean> =>
  sql<boolean>`${sql.ref(`${table}.rowid`)} in (${sql.join(
    pieces.map((piece) => sql`select * from (${piece})`),
    sql` union all `,
  )})`;
