import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { basename } from 'node:path';
import { DATE_ORDERS, FIELDS, guessMapping, type Mapping, sumsOf } from '../core/bring-in/fields.ts';
import { valueShown } from '../core/bring-in/row.ts';
import { DECIMAL_MARKS, guessDecimal } from '../core/bring-in/sum.ts';
import { readTable, type Table } from '../core/bring-in/table.ts';
import { type BadRow, bringIn, type Desk, tryFile } from '../core/bring-in/whole-file.ts';
import type { Answer, ShopError } from '../core/contract/errors.ts';
import { EXPORTS } from '../core/contract/export-kinds.ts';
import type { OutputOf } from '../core/contract/index.ts';
import { currencyDigits } from '../core/money/currency.ts';
import { type Cell, writeCsv } from '../core/take-out/csv.ts';
import { sayProblem } from './problem-words.ts';

/** One call of the shop, as the person who gave their code. */
export type Ask = (operation: string, input: unknown) => Promise<Answer>;

/** Where answers and sentences go. */
interface Say {
  out(line: string): void;
  err(sentence: string): void;
}

/** The shop said no to a piece. */
export class Refused extends Error {
  readonly error: ShopError;
  constructor(error: ShopError) {
    super(error.code);
    this.error = error;
  }
}

/** The command itself was wrong: a file that is not there, a column that nobody knows. */
export class WrongFile extends Error {}

export async function taken<O>(answer: Promise<Answer>): Promise<O> {
  const { ok, ...rest } = await answer;
  if (ok && 'output' in rest) return rest.output as O;
  throw new Refused((rest as { error: ShopError }).error);
}

const deskOf = (ask: Ask): Desk => ({
  tryPiece: (input) => taken(ask('import.try', input)),
  begin: (input) => taken(ask('import.begin', input)),
  put: (input) => taken(ask('import.put', input)),
  undo: (input) => taken(ask('import.undo', input)),
});

export interface ImportFlags {
  /** Try only. */
  readonly try?: boolean;
  /** Fields in the order of the file's columns, parted by commas; an empty one is left out. */
  readonly columns?: string;
  readonly dates?: string;
  readonly decimal?: string;
}

/** Tries a CSV file and, unless only that was asked, brings in what is new. Throws Refused and WrongFile. */
export async function importFile(path: string, flags: ImportFlags, ask: Ask, say: Say): Promise<void> {
  const bytes = readBytes(path);
  const table = readTable(bytes);
  if ('problem' in table) throw new WrongFile(sayUnreadable(table));
  const { settings } = await taken<OutputOf<'shop.get'>>(ask('shop.get', {}));
  const digits = currencyDigits(settings?.currency ?? '') ?? 2;
  const mapping = mappingOf(table, flags, digits);
  table.names.forEach((name, at) => {
    say.err(`${name}: ${mapping.columns[at] ?? 'left out'}`);
  });
  const { sums, unclear } = sumsOf(mapping, table.rows, digits);
  if (unclear !== null)
    throw new WrongFile(
      `Nothing was read: the sum ${unclear} could be a thousand or one. Say with --decimal . or --decimal , what parts the decimals in this file.`,
    );
  if (mapping.decimal !== null && sums.length > 0) say.err(`decimals of sums behind: ${mapping.decimal}`);
  const desk = deskOf(ask);
  const tried = await tryFile(table.rows, mapping, desk);
  if (tried === null) return;
  const cells = new Map(table.rows.map((row) => [row.line, row.cells]));
  for (const row of tried.bad) say.err(sayBad(row, (field) => valueShown(cells.get(row.line) ?? [], mapping, field)));
  const { fresh, customers, cars, visits, known } = tried;
  const found = { customers, cars, visits, known, bad: tried.bad };
  if (flags.try === true || fresh.size === 0) {
    say.out(JSON.stringify({ ok: true, output: { tried: found } }));
    say.err(
      `${customers} customers, ${cars} cars and ${visits} visits would come in; ${known} rows are here already, ${tried.bad.length} cannot be read.`,
    );
    return;
  }
  const rows = table.rows.filter((row) => fresh.has(row.line));
  const file = { name: basename(path), hash: createHash('sha256').update(bytes).digest('hex'), rows };
  const { id, made } = await bringIn(file, mapping, desk);
  const output = { id, ...found, customers: made.customers, cars: made.cars, visits: made.visits };
  say.out(JSON.stringify({ ok: true, output }));
  say.err(
    `${made.customers} customers, ${made.cars} cars and ${made.visits} visits came in; ${known} rows were here already, ${tried.bad.length} could not be read. Take it back with: call import.undo '{"id":"${id}"}'`,
  );
}

/** Writes what the shop holds of one kind as CSV, to a file or to standard output. */
export async function exportKind(kind: string, path: string | undefined, ask: Ask, say: Say): Promise<void> {
  if (!EXPORTS.some((one) => one === kind)) throw new WrongFile(`Say what: export ${EXPORTS.join(' | ')}`);
  const written: string[] = [];
  let after: string | null = '';
  let count = 0;
  while (after !== null) {
    const piece: OutputOf<'export.rows'> = await taken(ask('export.rows', { kind, after }));
    const isFigure = piece.columns.map((name) => piece.figures.includes(name));
    const rows = piece.rows.map((row) => row.map((text, at): Cell => (isFigure[at] ? { figure: text } : text)));
    written.push(writeCsv(after === '' ? [piece.columns, ...rows] : rows));
    count += rows.length;
    after = piece.next;
  }
  if (path === undefined) {
    say.out(written.join('').trimEnd());
    return;
  }
  try {
    // A mark at the beginning tells table programs that it is UTF-8. What is there already is not overwritten.
    writeFileSync(path, `\uFEFF${written.join('')}`, { flag: 'wx' });
  } catch (fault) {
    throw new WrongFile(`${path} cannot be written: ${fault instanceof Error ? fault.message : String(fault)}`);
  }
  say.out(JSON.stringify({ ok: true, output: { file: path, rows: count } }));
  say.err(`${count} ${kind} are in ${path}.`);
}

function readBytes(path: string): Buffer {
  try {
    return readFileSync(path);
  } catch {
    throw new WrongFile(`There is no file ${path} to read.`);
  }
}

function mappingOf(table: Table, flags: ImportFlags, digits: number): Mapping {
  const guessed = guessMapping(table.names, table.rows, digits);
  const dates = DATE_ORDERS.find((order) => order === flags.dates);
  if (flags.dates !== undefined && dates === undefined)
    throw new WrongFile(`--dates takes one of: ${DATE_ORDERS.join(', ')}`);
  const columns =
    flags.columns === undefined
      ? guessed.columns
      : flags.columns.split(',').map((name) => {
          const field = FIELDS.find((one) => one === name.trim()) ?? null;
          if (field === null && name.trim() !== '')
            throw new WrongFile(`No column can be ${name.trim()}. There are: ${FIELDS.join(', ')}`);
          return field;
        });
  const decimal = DECIMAL_MARKS.find((mark) => mark === flags.decimal);
  if (flags.decimal !== undefined && decimal === undefined) throw new WrongFile('--decimal takes . or ,');
  // Where the columns were said, their sums may stand elsewhere than was guessed.
  const sums = sumsOf({ ...guessed, columns }, table.rows, digits).sums;
  return { columns, dates: dates ?? guessed.dates, decimal: decimal ?? guessDecimal(sums, digits) };
}

const sayUnreadable = (problem: Exclude<ReturnType<typeof readTable>, Table>): string =>
  problem.problem === 'empty'
    ? 'There is nothing in this file.'
    : `A quote is opened on line ${problem.line} and never closed: nothing was read.`;

/** A row that cannot be brought in: its line, and of each field what stands there and what does not fit. */
function sayBad(row: BadRow, shown: (field: BadRow['problems'][number]['field']) => string): string {
  const problems = row.problems.map(({ field, problem, with: figures }) => {
    const value = shown(field);
    return `${field}${value === '' ? '' : ` "${value}"`} ${sayProblem(problem, figures)}`;
  });
  return `Line ${row.line}: ${problems.join('; ')}.`;
}
