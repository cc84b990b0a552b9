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

type Piece = RawBuilder<unknown>;

/** Rows of the index, at most so many, that hold a text of at least three characters in one of these columns. SQLite's own. */
export function holding<T extends keyof Columns>(
  table: T,
  columns: readonly Columns[T][],
  text: string,
  most: number,
): Piece {
  const index = sql.table(`find_${table}`);
  const asked = `{${columns.join(' ')}} : "${text.replaceAll('"', '""')}"`;
  return sql`select rowid from ${index} where ${index} match ${asked} limit ${most}`;
}

/** Above every character that a text can hold. */
const ABOVE = '\u{10FFFF}';

/** Rows, at most so many, whose column begins with a text: by its B-tree. */
export const beginning = (table: keyof Columns, column: string, text: string, most: number): Piece =>
  sql`select rowid from ${sql.table(table)} where ${sql.ref(column)} >= ${text} and ${sql.ref(column)} < ${`${text}${ABOVE}`} limit ${most}`;

/** The condition that a row of the table is in one of the pieces. */
export const inPieces = (table: keyof Columns, pieces: readonly Piece[]): RawBuilder<boolean> =>
  sql<boolean>`${sql.ref(`${table}.rowid`)} in (${sql.join(
    pieces.map((piece) => sql`select * from (${piece})`),
    sql` union all `,
  )})`;
