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

type Piece = RawBuilder<unknown>;

/** Every row of the index that holds a text of at least three characters in one of these columns. SQLite's own. */
export function holdingAll<T extends keyof Columns>(table: T, columns: readonly Columns[T][], text: string): Piece {
  const index = sql.table(`find_${table}`);
  const asked = `{${columns.join(' ')}} : "${text.replaceAll('"', '""')}"`;
  return sql`select rowid from ${index} where ${index} match ${asked}`;
}

/** The same, at most so many. */
export const holding = <T extends keyof Columns>(
  table: T,
  columns: readonly Columns[T][],
  text: string,
  most: number,
): Piece => sql`${holdingAll(table, columns, text)} limit ${most}`;

/** The same, the newest rows first: what is written down later has the higher number. */
export const holdingNewest = <T extends keyof Columns>(
  table: T,
  columns: readonly Columns[T][],
  text: string,
  most: number,
): Piece => sql`${holdingAll(table, columns, text)} order by rowid desc limit ${most}`;

/** Above every character that a text can hold. */
const ABOVE = '\u{10FFFF}';

/** Rows whose column begins with a text, by its B-tree; at most so many, where it says how many. */
export function beginning(table: keyof Columns, column: string, text: string, most: number | null = null): Piece {
  const rows = sql`select rowid from ${sql.table(table)} where ${sql.ref(column)} >= ${text} and ${sql.ref(column)} < ${`${text}${ABOVE}`}`;
  return most === null ? rows : sql`${rows} limit ${most}`;
}

/** The condition that a row of the table is in one of the pieces. */
export const inPieces = (table: keyof Columns, pieces: readonly Piece[]): RawBuilder<boolean> =>
  sql<boolean>`${sql.ref(`${table}.rowid`)} in (${sql.join(
    pieces.map((piece) => sql`select * from (${piece})`),
    sql` union all `,
  )})`;
