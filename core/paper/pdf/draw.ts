import type { PDFDocument, PDFPage, PDFRef } from '@cantoo/pdf-lib';
import type { CircleItem, Item, LogoItem, TextItem } from './block.ts';
import { drawPicture } from './draw-picture.ts';
import { EmbeddedFace } from './embed.ts';
import { FACES, type Face } from './fonts.ts';
import type { PaperLayout } from './layout.ts';
import type { Shaped, ShapedGlyph, Shaper } from './shape.ts';

type PdfLib = typeof import('@cantoo/pdf-lib');

/** #14573F: 8.5 to 1 on white, prints as a dark grey in mono. */
const ACCENT = [0x14 / 255, 0x57 / 255, 0x3f / 255] as const;
const ACCENT_INK = ACCENT.map((part) => part.toFixed(4)).join(' ');

/** Draws laid out pages into a PDF: one block of text a page, only the glyphs that are used. */
export async function drawPages(lib: PdfLib, pdf: PDFDocument, layout: PaperLayout, shaper: Shaper): Promise<void> {
  const faces = new Map<Face, EmbeddedFace>();
  const faceOf = (face: Face): EmbeddedFace => {
    const known = faces.get(face);
    if (known) return known;
    const fresh = new EmbeddedFace(face, shaper.faces[face].parts, pdf.context.nextRef());
    faces.set(face, fresh);
    return fresh;
  };
  const drawn = layout.pages.map((page) => {
    const content = `${ruling(page.items, layout.height)}${writing(page.items, layout.height, faceOf, shaper)}`;
    return { page, content };
  });
  const fonts: Record<string, PDFRef> = {};
  for (const [face, embedded] of faces) {
    embedded.write(lib, pdf.context);
    fonts[fontName(face)] = embedded.ref;
  }
  for (const { page, content } of drawn) {
    const sheet = pdf.addPage([layout.width, layout.height]);
    sheet.node.set(lib.PDFName.of('Contents'), pdf.context.register(pdf.context.flateStream(content)));
    sheet.node.set(lib.PDFName.of('Resources'), pdf.context.obj({ Font: fonts }));
    for (const item of page.items) {
      if (item.kind === 'logo') await drawLogo(lib, pdf, sheet, item, layout.height);
      if (item.kind === 'picture') await drawPicture(lib, pdf, sheet, item, layout.height);
    }
  }
}

function fontName(face: Face): string {
  return `F${FACES.indexOf(face)}`;
}

/** Rules, frames, lines and circles, in the order that they are given. */
function ruling(items: readonly Item[], height: number): string {
  const inked = (item: Item): string => {
    switch (item.kind) {
      case 'frame':
        return `0 G 1 w ${number(item.x + 0.5)} ${number(height - item.y - item.height + 0.5)} ${number(item.width - 1)} ${number(item.height - 1)} re S\n`;
      case 'rule': {
        const y = number(height - item.y);
        const ink = item.accent ? `${ACCENT_INK} RG` : '0 G';
        return `${ink} ${number(item.weight)} w ${number(item.x)} ${y} m ${number(item.x + item.width)} ${y} l S\n`;
      }
      case 'line':
        return `0 G ${number(item.weight)} w ${number(item.x)} ${number(height - item.y)} m ${number(item.x + item.dx)} ${number(height - item.y - item.dy)} l S\n`;
      case 'circle':
        return circle(item, height);
      case 'text':
      case 'logo':
      case 'picture':
        return '';
    }
  };
  return items.map(inked).join('');
}

/** How far the handles of a quarter of a circle reach: the cubic that is nearest to it. */
const QUARTER = (4 / 3) * (Math.SQRT2 - 1);

function circle({ x, y, radius, weight, blank }: CircleItem, height: number): string {
  const at = (across: number, down: number): string =>
    `${number(x + across * radius)} ${number(height - y - down * radius)}`;
  const quarter = (fromX: number, fromY: number, toX: number, toY: number): string =>
    `${at(fromX + QUARTER * toX, fromY + QUARTER * toY)} ${at(toX + QUARTER * fromX, toY + QUARTER * fromY)} ${at(toX, toY)} c`;
  const round = [quarter(1, 0, 0, 1), quarter(0, 1, -1, 0), quarter(-1, 0, 0, -1), quarter(0, -1, 1, 0)];
  return `${blank ? '1 g ' : ''}0 G ${number(weight)} w ${at(1, 0)} m ${round.join(' ')} ${blank ? 'b' : 's'}\n`;
}

function writing(items: readonly Item[], height: number, faceOf: (face: Face) => EmbeddedFace, shaper: Shaper): string {
  const out: string[] = ['BT\n'];
  let font = '';
  let ink = '';
  const line = (item: TextItem): void => {
    let open: { face: Face; end: number; size: number; accent: boolean; parts: string } | null = null;
    const close = (): void => {
      if (open) out.push(`[${open.parts}] TJ\n`);
      open = null;
    };
    for (const piece of item.pieces) {
      const { face } = piece.shaped;
      const embedded = faceOf(face);
      let parts = '';
      if (open && open.face === face && open.size === piece.size && open.accent === piece.accent) {
        parts = open.parts + gap(embedded, shaper.space(face), ((piece.x - open.end) * 1000) / piece.size);
      } else {
        close();
        const wanted = `/${fontName(face)} ${number(piece.size)} Tf `;
        const wantedInk = piece.accent ? `${ACCENT_INK} rg ` : '0 g ';
        out.push(font === wanted ? '' : wanted, ink === wantedInk ? '' : wantedInk);
        out.push(`1 0 0 1 ${number(item.x + piece.x)} ${number(height - item.y)} Tm `);
        font = wanted;
        ink = wantedInk;
      }
      const end: number = piece.x + (piece.shaped.width * piece.size) / 1000;
      open = { face, end, size: piece.size, accent: piece.accent, parts: parts + glyphs(embedded, piece.shaped) };
    }
    close();
  };
  for (const item of items) if (item.kind === 'text') line(item);
  return `${out.join('')}ET\n`;
}

/** A word as the array that shows it: hexadecimal glyphs, and between them what the font takes off. */
function glyphs(embedded: EmbeddedFace, shaped: Shaped): string {
  let parts = '<';
  for (const glyph of shaped.glyphs) {
    parts += embedded.code(glyph);
    if (Math.abs(glyph.kern) > 0.05) parts += `>${number(glyph.kern)}<`;
  }
  return `${parts}>`;
}

/** A real space, so that the text reads back as words, set to the width that was laid out. */
function gap(embedded: EmbeddedFace, space: ShapedGlyph | undefined, wide: number): string {
  if (wide < 0.05) return '';
  if (!space) return number(-wide);
  return `<${embedded.code(space)}>${number(space.advance - wide)}`;
}

async function drawLogo(lib: PdfLib, pdf: PDFDocument, page: PDFPage, item: LogoItem, height: number): Promise<void> {
  const { logo } = item;
  if (logo.kind === 'png') {
    const image = await pdf.embedPng(logo.base64);
    const scale = Math.min(item.width / image.width, item.height / image.height);
    const tall = image.height * scale;
    const y = height - item.y - (item.height + tall) / 2;
    page.drawImage(image, { x: item.x, y, width: image.width * scale, height: tall });
    return;
  }
  const scale = Math.min(item.width / logo.width, item.height / logo.height);
  const accent = lib.rgb(...ACCENT);
  for (const path of logo.paths) {
    const inked = path.stroke === null ? { color: accent } : { borderColor: accent, borderWidth: path.stroke };
    page.drawSvgPath(path.d, { x: item.x, y: height - item.y, scale, ...inked });
  }
}

/** Two decimals are finer than any printer. */
function number(value: number): string {
  return String(Math.round(value * 100) / 100);
}
