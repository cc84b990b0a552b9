import { existsSync, readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import type { PaperDocument } from '../core/paper/document.ts';
import type { Tx } from './context.ts';
import { makePdf, pdfPath } from './pdf.ts';
import type { Fault } from './verify.ts';

/** A piece of the papers that were looked at; `next` is where the next piece begins, null after the last. */
export interface PapersLooked {
  readonly of: number;
  readonly looked: number;
  readonly faults: readonly Fault[];
  readonly next: string | null;
}

/**
 * Makes up to `most` papers again after the one named and compares their bytes with the files in papers/. A paper without
 * a file is sound: it is made when it is wanted. An older version of the program may have set a paper differently.
 */
export async function verifyPapers(tx: Tx, folder: string, after: string, most: number): Promise<PapersLooked> {
  const rows = await tx
    .selectFrom('paper')
    .select(['id', 'document'])
    .where('id', '>', after)
    .orderBy('id')
    .limit(most)
    .execute();
  const { of } = await tx
    .selectFrom('paper')
    .select((on) => on.fn.countAll<number>().as('of'))
    .executeTakeFirstOrThrow();
  const faults: Fault[] = [];
  for (const { id, document: text } of rows) {
    const document = JSON.parse(text) as PaperDocument;
    const path = pdfPath(folder, id, document);
    if (existsSync(path) && !readFileSync(path).equals(await makePdf(document)))
      faults.push({ what: 'paper-file-differs', table: 'paper', row: id, detail: basename(path) });
    // Others may ask something in between.
    await setImmediate();
  }
  return { of, looked: rows.length, faults, next: rows.length === most ? (rows.at(-1)?.id ?? null) : null };
}
