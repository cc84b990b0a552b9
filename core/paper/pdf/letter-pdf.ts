import type { LetterDocument } from '../letter.ts';
import { paperWords } from '../words.ts';
import { type Block, SIZE, words } from './block.ts';
import { drawPages } from './draw.ts';
import { flow } from './flow.ts';
import { PaperCharacterMissing, type PaperFonts } from './fonts.ts';
import { garageHead, practiceMark } from './head.ts';
import type { PaperLayout } from './layout.ts';
import { loadFaces } from './paper-pdf.ts';
import { MARGIN, PAGE, paragraph, space } from './setting.ts';
import { Shaper } from './shape.ts';

/** A line of a letter is no longer than reads well, in points. */
const MEASURE = 400;

/** Lays a letter out. Characters that no font has stand in `shaper.missing` afterwards. */
function layoutLetter(document: LetterDocument, shaper: Shaper): PaperLayout {
  const [width, height] = PAGE[document.size];
  const setting = {
    document,
    words: paperWords(document.language, document.dateForm),
    shaper,
    width: width - 2 * MARGIN,
  };
  const set = (text: string, style: 'body' | 'bold', size: number, after = 0): readonly Block[] =>
    text === ''
      ? []
      : paragraph(shaper, words(text, style), {
          x: 0,
          width: Math.min(MEASURE, setting.width),
          size,
          leading: 1.4,
          after,
        });
  const lines = document.text.split('\n');
  const pages = flow(
    [
      ...(document.practice ? [practiceMark(setting)] : []),
      garageHead(setting),
      space(36),
      ...document.to.filter((line) => line !== '').flatMap((line) => set(line, 'body', SIZE.body)),
      space(36),
      ...set(setting.words.date(document.date, false), 'body', SIZE.body),
      space(18),
      ...set(document.subject, 'bold', SIZE.job, 6),
      ...lines.flatMap((line) => (line === '' ? [space(8)] : set(line, 'body', SIZE.found))),
    ],
    { margin: MARGIN, bottom: height - MARGIN, pageHead: () => [] },
  );
  return { width, height, pages };
}

/**
 * A letter as the bytes of a PDF; the same letter and fonts give the same bytes.
 * Throws PaperCharacterMissing when no font has a character of it.
 */
export async function letterPdf(document: LetterDocument, fonts: PaperFonts): Promise<Uint8Array> {
  const [lib, faces] = await Promise.all([import('@cantoo/pdf-lib'), loadFaces(fonts)]);
  const shaper = new Shaper(faces, 1);
  const layout = layoutLetter(document, shaper);
  if (shaper.missing.length > 0) throw new PaperCharacterMissing(shaper.missing);
  const pdf = await lib.PDFDocument.create({ updateMetadata: false });
  const written = new Date(document.writtenAt);
  pdf.setTitle(document.subject, { showInWindowTitleBar: true });
  pdf.setAuthor(document.garage.name);
  pdf.setLanguage(document.language);
  pdf.setCreator('Crownwheel');
  pdf.setProducer('Crownwheel');
  pdf.setCreationDate(written);
  pdf.setModificationDate(written);
  await drawPages(lib, pdf, layout, shaper);
  return pdf.save({
    ...{ useObjectStreams: true, addDefaultPage: false, updateFieldAppearances: false },
    objectsPerTick: Number.POSITIVE_INFINITY,
  });
}
