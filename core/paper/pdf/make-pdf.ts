import { drawPages } from './draw.ts';
import { PaperCharacterMissing, type PaperFonts } from './fonts.ts';
import type { PaperLayout } from './layout.ts';
import { loadFaces } from './paper-pdf.ts';
import { Shaper } from './shape.ts';

/** What the file says of itself. */
export interface AboutPdf {
  readonly title: string;
  readonly author: string;
  readonly language: 'en' | 'de';
  /** Epoch milliseconds. */
  readonly at: number;
}

/**
 * Lays a paper out and gives the bytes of its PDF; the same paper and fonts give the same bytes. Throws
 * PaperCharacterMissing when no font has a character of it, RangeError when a part is taller than a page.
 */
export async function makePdf(
  lay: (shaper: Shaper) => PaperLayout,
  about: AboutPdf,
  fonts: PaperFonts,
): Promise<Uint8Array> {
  const [lib, faces] = await Promise.all([import('@cantoo/pdf-lib'), loadFaces(fonts)]);
  const shaper = new Shaper(faces, 1);
  const layout = lay(shaper);
  if (shaper.missing.length > 0) throw new PaperCharacterMissing(shaper.missing);
  const pdf = await lib.PDFDocument.create({ updateMetadata: false });
  const at = new Date(about.at);
  pdf.setTitle(about.title, { showInWindowTitleBar: true });
  pdf.setAuthor(about.author);
  pdf.setLanguage(about.language);
  pdf.setCreator('Crownwheel');
  pdf.setProducer('Crownwheel');
  pdf.setCreationDate(at);
  pdf.setModificationDate(at);
  await drawPages(lib, pdf, layout, shaper);
  return pdf.save({
    ...{ useObjectStreams: true, addDefaultPage: false, updateFieldAppearances: false },
    objectsPerTick: Number.POSITIVE_INFINITY,
  });
}
