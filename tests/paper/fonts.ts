import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { FACES, PAPER_FONT_FILES, type PaperFonts } from '../../core/paper/pdf/paper-pdf.ts';

const require = createRequire(import.meta.url);

/** The fonts of papers, read once a test run. */
export const FONTS = Object.fromEntries(
  FACES.map((face) => [face, new Uint8Array(readFileSync(require.resolve(PAPER_FONT_FILES[face])))]),
) as PaperFonts;
