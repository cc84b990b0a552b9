import PDFDocument from 'pdfkit';
import type { Item, TextItem } from '../../core/paper/pdf/block.ts';
import type { Page } from '../../core/paper/pdf/flow.ts';
import type { Face, PaperFonts } from '../../core/paper/pdf/fonts.ts';

const ACCENT = '#14573F';

/** The words of a line that stand in one face and size, as whoever draws with the bare library would write them. */
function runs(item: TextItem) {
  const found: { x: number; face: Face; size: number; accent: boolean; text: string; end: number }[] = [];
  for (const { x, size, accent, shaped } of item.pieces) {
    const last = found.at(-1);
    const end = x + (shaped.width * size) / 1000;
    if (last?.face === shaped.face && last.size === size && last.accent === accent) {
      last.text += (x - last.end > 0.05 ? ' ' : '') + shaped.text;
      last.end = end;
    } else found.push({ x: item.x + x, face: shaped.face, size, accent, text: shaped.text, end });
  }
  return found;
}

function draw(pdf: PDFKit.PDFDocument, item: Item): void {
  if (item.kind === 'rule') {
    pdf.lineWidth(item.weight).strokeColor(item.accent ? ACCENT : 'black');
    pdf
      .moveTo(item.x, item.y)
      .lineTo(item.x + item.width, item.y)
      .stroke();
  }
  if (item.kind !== 'text') return;
  for (const { x, face, size, accent, text } of runs(item)) {
    pdf
      .font(face)
      .fontSize(size)
      .fillColor(accent ? ACCENT : 'black');
    pdf.text(text, x, item.y, { lineBreak: false, baseline: 'alphabetic' });
  }
}

/**
 * The same words and rules at the same places, in the same fonts, drawn by pdfkit; nothing is laid out here. Without the
 * features of a font, with which pdfkit remembers no word and takes many times as long.
 */
export function barePdf(
  layout: { readonly width: number; readonly height: number; readonly pages: Iterable<Page> },
  fonts: PaperFonts,
): Promise<Buffer> {
  const pdf = new PDFDocument({ autoFirstPage: false, size: [layout.width, layout.height], margin: 0 });
  const pieces: Buffer[] = [];
  pdf.on('data', (piece: Buffer) => pieces.push(piece));
  const done = new Promise<Buffer>((told) => pdf.on('end', () => told(Buffer.concat(pieces))));
  for (const [face, bytes] of Object.entries(fonts)) pdf.registerFont(face, bytes as unknown as ArrayBuffer);
  for (const page of layout.pages) {
    pdf.addPage();
    for (const item of page.items) draw(pdf, item);
  }
  pdf.end();
  return done;
}
