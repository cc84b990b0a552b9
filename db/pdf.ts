import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
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

/** Where the PDF of an issued paper is kept. */
export const pdfPath = (folder: string, id: string, document: PaperDocument): string =>
  join(
    folder,
    'papers',
    `${document.kind} ${document.number}${document.kind === 'quote' ? ` version ${document.version}` : ''} ${id}.pdf`,
  );

/** The PDF of a stored document: the same document gives the same bytes. */
export const makePdf = (document: PaperDocument): Promise<Uint8Array> => paperPdf(document, loadFonts());

/** The PDF of an issued paper: the file in papers/, made from the stored document the first time it is wanted. */
export async function pdfOf(folder: string, id: string, document: PaperDocument): Promise<Uint8Array> {
  const path = pdfPath(folder, id, document);
  return existsSync(path) ? readFileSync(path) : writePdf(path, document);
}

async function writePdf(path: string, document: PaperDocument): Promise<Uint8Array> {
  const bytes = await makePdf(document);
  mkdirSync(dirname(path), { recursive: true });
  const part = `${path}.part`;
  writeFileSync(part, bytes);
  renameSync(part, path);
  return bytes;
}

/** Makes the file of a paper anew. The one that was there is kept beside it; `at`, an instant, is in its name. */
export async function makePdfAnew(folder: string, id: string, document: PaperDocument, at: number): Promise<void> {
  const path = pdfPath(folder, id, document);
  if (existsSync(path)) renameSync(path, path.replace(/\.pdf$/, ` as found ${at}.pdf`));
  await writePdf(path, document);
}
