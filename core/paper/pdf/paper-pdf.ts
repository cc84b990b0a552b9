import type { Font } from '@cantoo/fontkit';
import type { PaperDocument } from '../document.ts';
import { paperName, paperWords } from '../words.ts';
import { drawPages } from './draw.ts';
import { PaperCharacterMissing, type PaperFonts } from './fonts.ts';
import { layoutPaper, type PaperLayout } from './layout.ts';
import { type OpenFaces, openFaces, Shaper } from './shape.ts';

export { FACES, PAPER_FONT_FILES, PaperCharacterMissing, type PaperFonts } from './fonts.ts';
export type { PaperLayout } from './layout.ts';

/**
 * A paper as the bytes of a PDF. The same document and fonts give the same bytes, always.
 * The libraries are loaded when the first paper is made.
 * Throws PaperCharacterMissing when no font has a character of it, RangeError when a part is taller than a page.
 */
export async function paperPdf(document: PaperDocument, fonts: PaperFonts): Promise<Uint8Array> {
  const [lib, { layout, shaper }] = await Promise.all([import('@cantoo/pdf-lib'), paperLayout(document, fonts)]);
  const pdf = await lib.PDFDocument.create({ updateMetadata: false });
  name(pdf, document);
  await drawPages(lib, pdf, layout, shaper);
  return pdf.save({
    useObjectStreams: true,
    addDefaultPage: false,
    updateFieldAppearances: false,
    objectsPerTick: Number.POSITIVE_INFINITY,
  });
}

/** The fonts opened for setting; the library for it is loaded when it is first wanted. */
export async function loadFaces(fonts: PaperFonts): Promise<OpenFaces> {
  const fontkit = await import('@cantoo/fontkit');
  return openFaces(fonts, (bytes): Font => {
    const font = fontkit.create(bytes);
    if (!('layout' in font)) throw new TypeError('A font file for papers holds several fonts');
    return font;
  });
}

/** The share of white between lines that is kept: the first as designed, the others tried when they save a page. */
const OPENNESS = [1, 0.75, 0.58] as const;

/** A paper as it is set, and what it was set with. */
export interface SetPaper {
  readonly layout: PaperLayout;
  readonly shaper: Shaper;
}

/**
 * The pages of a paper before they are drawn: which words stand where, in points. Pure; errors as for `paperPdf`.
 */
export async function paperLayout(document: PaperDocument, fonts: PaperFonts): Promise<SetPaper> {
  const faces = await loadFaces(fonts);
  const set = (openness: number): SetPaper => {
    const shaper = new Shaper(faces, openness);
    const layout = layoutPaper(document, shaper);
    if (shaper.missing.length > 0) throw new PaperCharacterMissing(shaper.missing);
    return { layout, shaper };
  };
  const [usual, ...closer] = OPENNESS;
  let best = set(usual);
  for (const openness of closer) {
    if (best.layout.pages.length === 1) break;
    const tried = set(openness);
    if (tried.layout.pages.length < best.layout.pages.length) best = tried;
  }
  return best;
}

function name(pdf: import('@cantoo/pdf-lib').PDFDocument, document: PaperDocument): void {
  const issued = new Date(document.issuedAt);
  const practice = document.practice ? `${paperWords(document.language).practice}: ` : '';
  pdf.setTitle(practice + paperName(document), { showInWindowTitleBar: true });
  pdf.setAuthor(document.garage.name);
  pdf.setLanguage(document.language);
  pdf.setCreator('Crownwheel');
  pdf.setProducer('Crownwheel');
  pdf.setCreationDate(issued);
  pdf.setModificationDate(issued);
}
