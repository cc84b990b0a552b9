/**
 * Schema 4: what find looks in, for three characters and more anywhere in a name, a plate, a VIN, a phone, a part. One
 * trigram table a kind, without a content of its own: its row is named by the rowid of the row that it is of. Nothing here
 * is a record: triggers keep it, and it can be made anew from the tables. A file must not be VACUUMed without that, since
 * rowids of tables with a text key may move. FTS5 is SQLite's own; another database would bring its own index.
 */

/** What is found of a table: its columns as they are folded already, or folded here. */
interface Found {
  readonly table: string;
  readonly columns: Readonly<Record<string, string>>;
}

/** A point at the end of what people remember the end of, so that the end can be asked for. */
const ENDED: readonly string[] = ['vin', 'phone', 'phone2'];

/** Lower case is folded by the index itself, and accents; these letters have none to take off. */
const folded = (column: string) =>
  [
    ['ł', 'l'],
    ['Ł', 'l'],
    ['ø', 'o'],
    ['Ø', 'o'],
    ['đ', 'd'],
    ['Đ', 'd'],
    ['ß', 'ss'],
  ].reduce((expression, [letter, plain]) => `replace(${expression}, '${letter}', '${plain}')`, column);

const FOUND: readonly Found[] = [
  { table: 'customer', columns: { name: 'find_name', phone: 'find_phone', phone2: 'find_phone2' } },
  { table: 'car', columns: { vin: 'vin' } },
  { table: 'car_plate', columns: { plate: 'find_plate' } },
  { table: 'part', columns: { number: 'find_number', words: 'words' } },
];

/** The index of a table, filled from its rows, and the triggers that keep it. */
export function findIndex({ table, columns }: Found): string {
  const names = Object.keys(columns).join(', ');
  const of = (row: string) =>
    Object.entries(columns)
      .map(([name, column]) =>
        name === 'words' ? folded(`${row}${column}`) : `${row}${column}${ENDED.includes(name) ? " || '.'" : ''}`,
      )
      .join(', ');
  const own = Object.values(columns);
  return `
CREATE VIRTUAL TABLE find_${table} USING fts5(${names}, content='', contentless_delete=1, tokenize='trigram remove_diacritics 1');
INSERT INTO find_${table} (rowid, ${names}) SELECT rowid, ${of('')} FROM ${table};
CREATE TRIGGER find_${table}_new AFTER INSERT ON ${table} BEGIN
  INSERT INTO find_${table} (rowid, ${names}) VALUES (new.rowid, ${of('new.')});
END;
CREATE TRIGGER find_${table}_changed AFTER UPDATE OF ${own.join(', ')} ON ${table}
WHEN ${own.map((column) => `new.${column} <> old.${column}`).join(' OR ')} BEGIN
  INSERT OR REPLACE INTO find_${table} (rowid, ${names}) VALUES (new.rowid, ${of('new.')});
END;
CREATE TRIGGER find_${table}_gone AFTER DELETE ON ${table} BEGIN
  DELETE FROM find_${table} WHERE rowid = old.rowid;
END;
`;
}

/** What Today looks for: what is not settled of cars that are gone, papers to send, old units that did not come back. */
const GONE = `
CREATE INDEX work_order_gone ON work_order (handed_over_at) WHERE handed_over_at IS NOT NULL;
CREATE INDEX paper_issued ON paper (issued_at);
CREATE INDEX line_core ON line (job_id) WHERE kind = 'core';
`;

export const find = { version: 4, name: 'find', sql: FOUND.map(findIndex).join('') + GONE };
