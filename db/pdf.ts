import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { PaperDocument } from '../core/paper/document.ts';
import { FACES, PAPER_FONT_FILES, type PaperFonts, paperPdf } from '../core/paper/pdf/paper-pdf.ts';

let fonts: PaperFonts | null = null;

/** The fonts of papers, read once. */
export function loadFonts(): PaperFonts {
  const find = createRequire(import.meta.url);
  fonts ??= Object.fromEntries(
    FACES.map((face) => [face, new Uint8Array(readFileSync(find.resolve(PAPER_FONT_FILES[face])))]),
  ) as PaperFonts;
  return fonts;
}

/** The PDF of an issued paper: the file in papers/, made from the stored document the first time it is wanted. */
export async function pdfOf(folder: string, id: string, document: PaperDocument): Promise<Uint8Array> {
  const path = join(
    folder,
    'papers',
    `${document.kind} ${document.number}${document.kind === 'quote' ? ` version ${document.version}` : ''} ${id}.pdf`,
  );
  if (existsSync(path)) return readFileSync(path);
  const bytes = await paperPdf(document, loadFonts());
  mkdirSync(join(folder, 'papers'), { recursive: true });
  const part = `${path}.part`;
  writeFileSync(part, bytes);
  renameSync(part, path);
  return bytes;
}
