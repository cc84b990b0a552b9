import type { InputOf, OutputOf } from '../contract/index.ts';
import type { Mapping } from './fields.ts';
import type { TableRow } from './table.ts';

/** So many rows are handed over at once: each piece is a change of its own, so that nobody waits for the whole file. */
const PIECE = 250;

/** How a piece is called; throws what the caller throws for a refusal. */
export interface Desk {
  readonly tryPiece: (input: InputOf<'import.try'>) => Promise<OutputOf<'import.try'>>;
  readonly begin: (input: InputOf<'import.begin'>) => Promise<OutputOf<'import.begin'>>;
  readonly put: (input: InputOf<'import.put'>) => Promise<OutputOf<'import.put'>>;
  readonly undo: (input: InputOf<'import.undo'>) => Promise<OutputOf<'import.undo'>>;
}

/** Watching and stopping: `done` of `total` rows. After a stop no further piece is handed over. */
export interface Watch {
  readonly onProgress?: (done: number, total: number) => void;
  readonly stopped?: () => boolean;
}

export type BadRow = OutputOf<'import.put'>['bad'][number];

/** What a file would bring. */
export interface Tried {
  /** Lines that hold something that is not here. */
  readonly fresh: ReadonlySet<number>;
  readonly customers: number;
  readonly cars: number;
  readonly visits: number;
  readonly known: number;
  readonly bad: readonly BadRow[];
}

const inputOf = (mapping: Mapping) => ({ ...mapping, columns: [...mapping.columns] });

/** Row by row through a file, a piece at a time. False where it was stopped. */
async function through(
  rows: readonly TableRow[],
  watch: Watch,
  each: (piece: { line: number; cells: string[] }[]) => Promise<void>,
): Promise<boolean> {
  for (let at = 0; at < rows.length; at += PIECE) {
    if (watch.stopped?.()) return false;
    await each(rows.slice(at, at + PIECE).map(({ line, cells }) => ({ line, cells: [...cells] })));
    watch.onProgress?.(Math.min(at + PIECE, rows.length), rows.length);
  }
  return true;
}

/** Tries a whole file and writes nothing. null where it was stopped. */
export async function tryFile(
  rows: readonly TableRow[],
  mapping: Mapping,
  desk: Pick<Desk, 'tryPiece'>,
  watch: Watch = {},
): Promise<Tried | null> {
  const fresh = new Set<number>();
  const makes = { customer: new Set<string>(), car: new Set<string>(), visit: new Set<string>(), link: new Set() };
  const bad: BadRow[] = [];
  let known = 0;
  const whole = await through(rows, watch, async (piece) => {
    const tried = await desk.tryPiece({ mapping: inputOf(mapping), rows: piece });
    known += tried.known;
    bad.push(...tried.bad);
    for (const { line, makes: made } of tried.would) {
      fresh.add(line);
      for (const { what, name } of made) makes[what].add(name);
    }
  });
  if (!whole) return null;
  return { fresh, customers: makes.customer.size, cars: makes.car.size, visits: makes.visit.size, known, bad };
}

/** What was brought in, and under what id; `whole` is false where it was stopped on the way. */
export interface Brought {
  readonly id: string;
  readonly made: OutputOf<'import.put'>['made'];
  readonly bad: readonly BadRow[];
  /** Rows that were gone through. */
  readonly rows: number;
  readonly whole: boolean;
}

/** As a file is brought in: what has come so far, after each piece. */
export interface BringWatch extends Watch {
  readonly onSoFar?: (brought: Brought) => void;
}

/**
 * Brings in what was found fresh in a file. What was stopped on the way (`before`) goes on behind its last row under the
 * id it has, so that the whole file is taken back at once.
 */
export async function bringIn(
  file: { readonly name: string; readonly hash: string; readonly rows: readonly TableRow[] },
  mapping: Mapping,
  desk: Pick<Desk, 'begin' | 'put'>,
  watch: BringWatch = {},
  before: Brought | null = null,
): Promise<Brought> {
  const { id } = before ?? (await desk.begin({ fileName: file.name, fileHash: file.hash, mapping: inputOf(mapping) }));
  const skipped = before?.rows ?? 0;
  const total = file.rows.length;
  let sofar: Brought = before ?? { id, made: { ...NOTHING_MADE }, bad: [], rows: 0, whole: false };
  const onProgress = (done: number) => watch.onProgress?.(skipped + done, total);
  const whole = await through(file.rows.slice(skipped), { ...watch, onProgress }, async (rows) => {
    const put = await desk.put({ id, rows });
    const made = { ...sofar.made };
    for (const what of Object.keys(made) as (keyof typeof made)[]) made[what] += put.made[what];
    sofar = { id, made, bad: [...sofar.bad, ...put.bad], rows: sofar.rows + rows.length, whole: false };
    watch.onSoFar?.(sofar);
  });
  return { ...sofar, whole };
}

const NOTHING_MADE: Brought['made'] = { customers: 0, cars: 0, visits: 0, known: 0, bad: 0 };

/** Takes back all that a file brought in. How many rows went, and how many stay since they were worked with. */
export async function takeBackAll(
  id: string,
  desk: Pick<Desk, 'undo'>,
  onProgress?: (gone: number) => void,
): Promise<{ readonly gone: number; readonly kept: number }> {
  let gone = 0;
  let kept = 0;
  let after: string | null = null;
  do {
    const piece: OutputOf<'import.undo'> = await desk.undo({ id, after });
    gone += piece.gone;
    kept += piece.kept;
    after = piece.next;
    onProgress?.(gone);
  } while (after !== null);
  return { gone, kept };
}
