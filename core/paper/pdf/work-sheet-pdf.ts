import type { WorkSheetDocument } from '../work-sheet.ts';
import { workSheetWords } from '../work-sheet-words.ts';
import { moved } from './block.ts';
import { drawPages } from './draw.ts';
import { flow } from './flow.ts';
import { PaperCharacterMissing, type PaperFonts } from './fonts.ts';
import { FOOT_HEIGHT, FOOT_LINE } from './head.ts';
import type { PaperLayout } from './layout.ts';
import { loadFaces } from './paper-pdf.ts';
import { MARGIN, PAGE } from './setting.ts';
import { Shaper } from './shape.ts';
import { sheetEnd, sheetFoot } from './work-sheet/end.ts';
import { sheetHead, sheetShortHead } from './work-sheet/head.ts';
import { type SheetSetting, stepBlocks, stepsHead } from './work-sheet/steps.ts';

/** The share of white between lines that is kept where it saves a page. */
const CLOSER = 0.7;

function settingOf(document: WorkSheetDocument, shaper: Shaper): SheetSetting {
  return {
    document,
    sheet: workSheetWords(document.language),
    shaper,
    width: PAGE[document.size][0] - 2 * MARGIN,
  };
}

function layoutWorkSheet(setting: SheetSetting): PaperLayout {
  const { document } = setting;
  const [width, height] = PAGE[document.size];
  const pages = flow(
    [
      ...sheetHead(setting),
      stepsHead(setting, true),
      ...document.steps.flatMap((step) => stepBlocks(setting, step)),
      ...sheetEnd(setting),
    ],
    {
      margin: MARGIN,
      bottom: height - MARGIN - FOOT_HEIGHT,
      pageHead: (mark) => [sheetShortHead(setting), ...(mark ? [stepsHead(setting, false)] : [])],
    },
  );
  return {
    width,
    height,
    pages: pages.map((page, index) => ({
      items: [
        ...page.items,
        ...moved(sheetFoot(setting, index + 1, pages.length), MARGIN, height - MARGIN - FOOT_LINE),
      ],
    })),
  };
}

/** What a reader calls the sheet: "Bench copy, Order 1187, B". */
export function workSheetName(document: WorkSheetDocument): string {
  const sheet = workSheetWords(document.language);
  const about =
    document.visit === null ? document.title : `${sheet.order} ${document.visit.order}, ${document.visit.letter}`;
  return `${sheet.title}, ${about}`;
}

/** The bench copy before it is drawn, and what it is set with. Errors as for `workSheetPdf`. */
export async function workSheetLayout(
  document: WorkSheetDocument,
  fonts: PaperFonts,
): Promise<{ readonly layout: PaperLayout; readonly shaper: Shaper }> {
  const faces = await loadFaces(fonts);
  const set = (openness: number) => {
    const shaper = new Shaper(faces, openness);
    const layout = layoutWorkSheet(settingOf(document, shaper));
    if (shaper.missing.length > 0) throw new PaperCharacterMissing(shaper.missing);
    return { layout, shaper };
  };
  const open = set(1);
  if (open.layout.pages.length === 1) return open;
  const closer = set(CLOSER);
  return closer.layout.pages.length < open.layout.pages.length ? closer : open;
}

/**
 * The bench copy as the bytes of a PDF; the same document and fonts give the same bytes.
 * Throws PaperCharacterMissing when no font has a character of it, RangeError when a part is taller than a page.
 */
export async function workSheetPdf(document: WorkSheetDocument, fonts: PaperFonts): Promise<Uint8Array> {
  const [lib, { layout, shaper }] = await Promise.all([import('@cantoo/pdf-lib'), workSheetLayout(document, fonts)]);
  const pdf = await lib.PDFDocument.create({ updateMetadata: false });
  const written = new Date(document.writtenAt);
  pdf.setTitle(workSheetName(document), { showInWindowTitleBar: true });
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
