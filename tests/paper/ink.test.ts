import { Path2D } from '@napi-rs/canvas';
import { describe, expect, it } from 'vitest';
import { type PaperLayout, paperLayout, paperPdf } from '../../core/paper/pdf/paper-pdf.ts';
import { FONTS } from './fonts.ts';
import { LONG_INVOICE } from './long-invoice.ts';
import { INVOICE, QUOTE } from './papers.ts';
import { drawn, inkIn, type Raster, rasterise } from './read-back.ts';

const SCALE = 2;
const ACCENT = '#14573F';
type Shaper = Awaited<ReturnType<typeof paperLayout>>['shaper'];

/**
 * The reference: the outlines of the whole fonts, painted where the layout says. No part of a font is written or
 * read on this way, so a glyph that a subset drops is there in one picture and missing in the other.
 */
function reference(layout: PaperLayout, page: number, shaper: Shaper): Promise<Raster> {
  return drawn(Math.ceil(layout.width * SCALE), Math.ceil(layout.height * SCALE), (context) => {
    for (const item of layout.pages[page]?.items ?? []) {
      if (item.kind !== 'text') continue;
      for (const piece of item.pieces) {
        const { font } = shaper.faces[piece.shaped.face];
        const em = (piece.size * SCALE) / font.unitsPerEm;
        let x = (item.x + piece.x) * SCALE;
        context.fillStyle = piece.accent ? ACCENT : '#000';
        for (const glyph of piece.shaped.glyphs) {
          const outline = font.getGlyph(glyph.id)?.path.toSVG() ?? '';
          context.setTransform(em, 0, 0, -em, x, item.y * SCALE);
          context.fill(new Path2D(outline));
          x += ((glyph.advance - glyph.kern) * piece.size * SCALE) / 1000;
        }
      }
    }
  });
}

describe('ink of a drawn paper against the outlines of the whole fonts', () => {
  it.each([
    ['quote', QUOTE, 0],
    ['invoice', INVOICE, 0],
    ['long invoice', LONG_INVOICE, 1],
  ] as const)('%s: every line of text carries its ink', { timeout: 30_000 }, async (_name, document, page) => {
    const { layout, shaper } = await paperLayout(document, FONTS);
    const real = await rasterise(await paperPdf(document, FONTS), page + 1, SCALE);
    const whole = await reference(layout, page, shaper);
    let compared = 0;
    for (const item of layout.pages[page]?.items ?? []) {
      if (item.kind !== 'text' || item.text.trim() === '') continue;
      const size = item.pieces[0]?.size ?? 0;
      // Cut in eight along the line: one dropped letter is seen, even in a long sentence.
      const parts = 8;
      for (let part = 0; part < parts; part++) {
        const left = (item.x + (item.width * part) / parts) * SCALE;
        const right = (item.x + (item.width * (part + 1)) / parts) * SCALE;
        const box = [left, (item.y - size * 0.72) * SCALE, right, (item.y + size * 0.22) * SCALE] as const;
        const wanted = inkIn(whole, ...box);
        if (wanted < 8) continue;
        compared += 1;
        expect(inkIn(real, ...box) / wanted, `“${item.text}”, part ${part + 1} of ${parts}`).toBeGreaterThan(0.8);
        expect(inkIn(real, ...box) / wanted, `“${item.text}”, part ${part + 1} of ${parts}`).toBeLessThan(1.25);
      }
    }
    expect(compared).toBeGreaterThan(150);
  });

  it('would see dropped glyphs: the same paper with every second glyph gone fails the comparison', async () => {
    const { layout, shaper } = await paperLayout(QUOTE, FONTS);
    const item = layout.pages[0]?.items.find((one) => one.kind === 'text' && one.text.includes('Corvane'));
    if (item?.kind !== 'text') throw new Error('The car is not on the paper');
    const thinned = item.pieces.map((piece) => ({
      ...piece,
      shaped: { ...piece.shaped, glyphs: piece.shaped.glyphs.filter((_, index) => index % 2 === 0) },
    }));
    const one = { ...layout, pages: [{ items: [item] }] };
    const other = { ...layout, pages: [{ items: [{ ...item, pieces: thinned }] }] };
    const full = await reference(one, 0, shaper);
    const holed = await reference(other, 0, shaper);
    const all = [0, 0, full.width, full.height] as const;
    expect(inkIn(holed, ...all) / inkIn(full, ...all)).toBeLessThan(0.7);
  });
});
