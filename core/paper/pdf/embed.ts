import type { Font, Subset } from '@cantoo/fontkit';
import type { PDFContext, PDFRef } from '@cantoo/pdf-lib';
import type { Face } from './fonts.ts';
import type { ShapedGlyph } from './shape.ts';

type PdfLib = typeof import('@cantoo/pdf-lib');

/** One face of one paper: numbers the glyphs that are used and writes only those into the file. */
export class EmbeddedFace {
  readonly ref: PDFRef;
  readonly #font: Font;
  readonly #subset: Subset;
  readonly #tag: string;
  readonly #used = new Map<number, { code: number; hex: string; glyph: ShapedGlyph }>();

  constructor(face: Face, font: Font, ref: PDFRef) {
    this.ref = ref;
    this.#font = font;
    this.#subset = font.createSubset();
    // Six capitals and a plus before the name mark a part of a font (ISO 32000-1, 9.6.4).
    this.#tag = `${face.toUpperCase().slice(0, 5).padEnd(6, 'Z')}+${font.postscriptName ?? face}`;
  }

  /** The glyph as four hexadecimal digits of this file's own numbering. */
  code(glyph: ShapedGlyph): string {
    const known = this.#used.get(glyph.id);
    if (known) return known.hex;
    const code = this.#subset.includeGlyph(glyph.id);
    const hex = hex4(code);
    this.#used.set(glyph.id, { code, hex, glyph });
    return hex;
  }

  /** Writes the font, its widths and the way back from glyphs to characters (ISO 32000-1, 9.7.4 and 9.10.3). */
  write(lib: PdfLib, context: PDFContext): void {
    const font = this.#font;
    const scale = 1000 / font.unitsPerEm;
    const box = font.bbox;
    const used = [...this.#used.values()].sort((a, b) => a.code - b.code);
    const file = context.register(context.flateStream(this.#subset.encode()));
    const descriptor = context.obj({
      Type: 'FontDescriptor',
      FontName: this.#tag,
      Flags: 4,
      FontBBox: [box.minX, box.minY, box.maxX, box.maxY].map((value) => Math.round(value * scale)),
      ItalicAngle: font.italicAngle,
      Ascent: Math.round(font.ascent * scale),
      Descent: Math.round(font.descent * scale),
      CapHeight: Math.round((font.capHeight || font.ascent) * scale),
      StemV: 80,
      FontFile2: file,
    });
    const descendant = context.obj({
      Type: 'Font',
      Subtype: 'CIDFontType2',
      BaseFont: this.#tag,
      CIDToGIDMap: 'Identity',
      CIDSystemInfo: { Registry: lib.PDFString.of('Adobe'), Ordering: lib.PDFString.of('Identity'), Supplement: 0 },
      FontDescriptor: context.register(descriptor),
      W: used.flatMap((one) => [one.code, [Math.round(one.glyph.advance * 100) / 100]]),
    });
    const toUnicode = context.register(context.flateStream(characterMap(used)));
    context.assign(
      this.ref,
      context.obj({
        Type: 'Font',
        Subtype: 'Type0',
        BaseFont: this.#tag,
        Encoding: 'Identity-H',
        DescendantFonts: [context.register(descendant)],
        ToUnicode: toUnicode,
      }),
    );
  }
}

/** A CMap from glyph numbers to UTF-16, in runs of at most 100 as the format asks. */
function characterMap(used: readonly { hex: string; glyph: ShapedGlyph }[]): string {
  const runs: string[] = [];
  for (let start = 0; start < used.length; start += 100) {
    const run = used.slice(start, start + 100);
    const rows = run.map((one) => `<${one.hex}> <${utf16(one.glyph.text)}>`);
    runs.push(`${run.length} beginbfchar\n${rows.join('\n')}\nendbfchar`);
  }
  return `/CIDInit /ProcSet findresource begin
12 dict begin
begincmap
/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def
/CMapName /Adobe-Identity-UCS def
/CMapType 2 def
1 begincodespacerange
<0000> <FFFF>
endcodespacerange
${runs.join('\n')}
endcmap
CMapName currentdict /CMap defineresource pop
end
end`;
}

function hex4(value: number): string {
  return value.toString(16).toUpperCase().padStart(4, '0');
}

function utf16(text: string): string {
  let hex = '';
  for (let index = 0; index < text.length; index++) hex += hex4(text.charCodeAt(index));
  return hex;
}
