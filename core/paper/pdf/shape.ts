import type { Font } from '@cantoo/fontkit';
import { FACES, FACES_OF_STYLE, type Face, FEATURES_OF_FACE, type PaperFonts, type Style } from './fonts.ts';

/** One glyph of a shaped word. `kern` is what the font takes off (or adds) after it, in thousandths of the size. */
export interface ShapedGlyph {
  readonly id: number;
  readonly advance: number;
  readonly kern: number;
  /** The characters it stands for, for reading the paper back. */
  readonly text: string;
}

/** A word, or a piece of one, in one face. Width in thousandths of the size. */
export interface Shaped {
  readonly face: Face;
  readonly text: string;
  readonly glyphs: readonly ShapedGlyph[];
  readonly width: number;
}

/** One font file, opened when it is first asked for: most papers never need the spare ones. */
class OpenFace {
  readonly words = new Map<string, Shaped>();
  readonly has = new Map<number, boolean>();
  readonly #open: () => Font;
  #font: Font | undefined;
  #parts: Font | undefined;

  constructor(open: () => Font) {
    this.#open = open;
  }

  /** For shaping: only `shape` asks it for glyphs, so that each glyph keeps the characters it stands for. */
  get font(): Font {
    if (!this.#font) {
      this.#font = this.#open();
      settleCharacters(this.#font);
    }
    return this.#font;
  }

  /** For writing: taking a font apart loads parts of glyphs, and a part (the dotless i of an i) has no characters. */
  get parts(): Font {
    this.#parts ??= this.#open();
    return this.#parts;
  }
}

export type OpenFaces = Readonly<Record<Face, OpenFace>>;
type FontOpener = (bytes: Uint8Array) => Font;

/** Words remembered a face; papers of one shop use the same few thousand words again and again. */
const MOST_WORDS = 4000;
const opened = new WeakMap<Uint8Array, OpenFace>();

/** The fonts, each opened at most once for the life of its bytes. */
export function openFaces(fonts: PaperFonts, open: FontOpener): OpenFaces {
  const openOne = (face: Face): OpenFace => {
    const known = opened.get(fonts[face]);
    if (known) return known;
    const bytes = fonts[face];
    const fresh = new OpenFace(() => open(bytes));
    opened.set(fonts[face], fresh);
    return fresh;
  };
  return Object.fromEntries(FACES.map((face) => [face, openOne(face)])) as Record<Face, OpenFace>;
}

/** Shapes texts for one paper and remembers what no font could show. */
export class Shaper {
  readonly faces: OpenFaces;
  /** How much of the white between lines is kept: 1 as designed, less to save a page. */
  readonly openness: number;
  readonly #missing = new Set<string>();

  constructor(faces: OpenFaces, openness: number) {
    this.faces = faces;
    this.openness = openness;
  }

  /** Characters that no face had, in the order met. */
  get missing(): readonly string[] {
    return [...this.#missing];
  }

  /** A space in a style, in thousandths of the size. */
  spaceWidth(style: Style): number {
    return this.#word(FACES_OF_STYLE[style][0] ?? 'body', ' ').width;
  }

  /** The space of a face. */
  space(face: Face): ShapedGlyph | undefined {
    return this.#word(face, ' ').glyphs[0];
  }

  /** Can one face of the style show all of the text? Then that face, so that a name is not set in two. */
  faceFor(text: string, style: Style): Face | undefined {
    return FACES_OF_STYLE[style].find((face) => [...text].every((character) => this.#has(face, character)));
  }

  /** A word in the first face that has all of it, else piece by piece. `prefer` is tried first. */
  word(text: string, style: Style, prefer: Face | undefined): readonly Shaped[] {
    const whole = prefer ?? this.faceFor(text, style);
    if (whole) return [this.#word(whole, text)];
    const pieces: { face: Face; text: string }[] = [];
    for (const character of text) {
      const face = FACES_OF_STYLE[style].find((one) => this.#has(one, character));
      if (!face) {
        this.#missing.add(character);
        continue;
      }
      const last = pieces.at(-1);
      if (last?.face === face) last.text += character;
      else pieces.push({ face, text: character });
    }
    return pieces.map((piece) => this.#word(piece.face, piece.text));
  }

  #has(face: Face, character: string): boolean {
    const { has } = this.faces[face];
    const codePoint = character.codePointAt(0) ?? 0;
    const known = has.get(codePoint);
    if (known !== undefined) return known;
    const answer = this.faces[face].font.hasGlyphForCodePoint(codePoint);
    has.set(codePoint, answer);
    return answer;
  }

  #word(face: Face, text: string): Shaped {
    const { words } = this.faces[face];
    const known = words.get(text);
    if (known) return known;
    if (words.size >= MOST_WORDS) words.clear();
    const shaped = shape(this.faces[face].font, face, text);
    words.set(text, shaped);
    return shaped;
  }
}

/**
 * Gives every glyph its first character for good. The library remembers whichever came first, so a no-break space or
 * a Greek delta seen early would else change how later papers read back, and their bytes.
 */
function settleCharacters(font: Font): void {
  for (const codePoint of font.characterSet) font.glyphForCodePoint(codePoint);
}

/** A ligature reads back as its letters: searching for 'fine' must find it. U+FB00 to FB06 are the Latin ones. */
function charactersOf(codePoints: readonly number[]): string {
  return String.fromCodePoint(...codePoints).replace(/[\ufb00-\ufb06]/g, (ligature) => ligature.normalize('NFKC'));
}

function shape(font: Font, face: Face, text: string): Shaped {
  const run = font.layout(text, FEATURES_OF_FACE[face]);
  const perMille = 1000 / font.unitsPerEm;
  let width = 0;
  const glyphs = run.glyphs.map((glyph, index): ShapedGlyph => {
    const advance = glyph.advanceWidth * perMille;
    const moved = (run.positions?.[index]?.xAdvance ?? glyph.advanceWidth) * perMille;
    width += moved;
    return { id: glyph.id, advance, kern: advance - moved, text: charactersOf(glyph.codePoints) };
  });
  return { face, text, glyphs, width };
}
