import { describe, expect, it } from 'vitest';
import { paperLayout, paperPdf } from '../../core/paper/pdf/paper-pdf.ts';
import { FONTS } from './fonts.ts';
import { INVOICE } from './papers.ts';
import { readPages, textOf } from './read-back.ts';

/** и в д п т ц ш: the letters whose Bulgarian shapes a Ukrainian, Serb or Russian reads as other letters. */
const NAME = 'Іваненко Людмила з підписом';

describe('Cyrillic on papers', () => {
  it('has the shapes that most of its readers know, and reads back as typed', async () => {
    const document = { ...INVOICE, warranty: NAME };
    const { layout, shaper } = await paperLayout(document, FONTS);
    const names = new Map<string, string>();
    for (const item of layout.pages.flatMap((page) => page.items)) {
      if (item.kind !== 'text' || !item.text.includes('Людмила')) continue;
      for (const { shaped } of item.pieces)
        for (const { id, text } of shaped.glyphs) {
          const glyph = shaper.faces[shaped.face].font.getGlyph(id);
          names.set(text, glyph && 'name' in glyph ? String(glyph.name) : '');
        }
    }
    for (const letter of 'ивдп') expect(names.get(letter), letter).toMatch(/\.loclRUS$/);
    const text = textOf((await readPages(await paperPdf(document, FONTS)))[0] ?? []);
    expect(text).toContain(NAME);
  });
});
