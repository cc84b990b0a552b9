import { type Options, parse } from 'csv-parse/browser/esm/sync';
import { decodeText, type Encoding } from './decode.ts';

/** One row of a file, with the line on which it begins. */
export interface TableRow {
  readonly line: number;
  readonly cells: readonly string[];
}

export interface Table {
  readonly encoding: Encoding;
  readonly delimiter: Delimiter;
  /** The names of the columns, each once; where the first row names none, their numbers. */
  readonly names: readonly string[];
  readonly rows: readonly TableRow[];
}

/** Why a file cannot be read at all: nothing in it, or a quote that is opened on a line and never closed. */
export type TableProblem = { readonly problem: 'empty' } | { readonly problem: 'quote-open'; readonly line: number };

export const DELIMITERS = [';', ',', '\t'] as const;
export type Delimiter = (typeof DELIMITERS)[number];

/** Columns and rows of a CSV file (RFC 4180) of any encoding, parted by semicolon, comma or tab. */
export function readTable(bytes: Uint8Array): Table | TableProblem {
  const { text, encoding } = decodeText(bytes);
  const delimiter = guessDelimiter(text);
  const rows = readRows(text, delimiter);
  if ('problem' in rows) return rows;
  const [first, ...rest] = rows;
  if (first === undefined) return { problem: 'empty' };
  const named = namesColumns(first.cells);
  const width = rows.reduce((most, row) => Math.max(most, row.cells.length), 0);
  const names = numbered(Array.from({ length: width }, (_, at) => (named ? (first.cells[at]?.trim() ?? '') : '')));
  return { encoding, delimiter, names, rows: named ? rest : rows };
}

/** The rows of a text. Empty lines are none; a stray quote inside a cell stands for itself. */
export function readRows(text: string, delimiter: Delimiter): TableRow[] | TableProblem {
  const options: Options = { bom: true, delimiter, info: true, relax_column_count: true, skip_empty_lines: true };
  const read = (more: Options) =>
    (parse(text, { ...options, ...more }) as unknown as Read[]).map(({ record, info }) => ({
      line: info.lines - breaksIn(record),
      cells: record,
    }));
  try {
    return read({});
  } catch {
    try {
      return read({ relax_quotes: true });
    } catch {
      return { problem: 'quote-open', line: openedOn(text, { ...options, relax_quotes: true }) };
    }
  }
}

/** The line after the last row that could be read. */
function openedOn(text: string, options: Options): number {
  let last = 0;
  try {
    parse(text, {
      ...options,
      on_record: (_record, { lines }) => {
        last = lines;
        return null;
      },
    });
  } catch {
    // It is known that it cannot be read to its end.
  }
  return last + 1;
}

interface Read {
  readonly record: string[];
  /** `lines` counts to the end of the row. */
  readonly info: { readonly lines: number };
}

const breaksIn = (cells: readonly string[]): number =>
  cells.reduce((sum, cell) => sum + (cell.includes('\n') ? cell.split('\n').length - 1 : 0), 0);

/** How much of a text is looked at to tell what parts its cells. */
const LOOKED_AT = 20_000;

/** What parts the cells: what gives the most lines of the same width, more than one. */
function guessDelimiter(text: string): Delimiter {
  const beginning = text.length > LOOKED_AT ? text.slice(0, text.lastIndexOf('\n', LOOKED_AT)) : text;
  const scored = DELIMITERS.map((delimiter) => {
    const rows = readRows(beginning, delimiter);
    if ('problem' in rows) return { delimiter, score: 0 };
    const width = rows[0]?.cells.length ?? 0;
    const even = rows.filter((row) => row.cells.length === width).length;
    return { delimiter, score: width < 2 ? 0 : (even / rows.length) * Math.min(width, 10) };
  });
  return scored.reduce((best, one) => (one.score > best.score ? one : best)).delimiter;
}

/** Names that tell the columns apart: an empty one is the column's number, a repeated one gets it behind. */
const numbered = (names: readonly string[]): string[] =>
  names.map((name, at) => (name === '' ? `${at + 1}` : names.indexOf(name) < at ? `${name} ${at + 1}` : name));

/** Whether a row names columns: words only, no figure, no e-mail, and hardly a gap. */
const namesColumns = (cells: readonly string[]): boolean =>
  cells.every((cell) => !/@|\d{3}/.test(cell)) && cells.filter((cell) => cell.trim() !== '').length > cells.length / 2;
