import type { Style } from './fonts.ts';
import type { Shaped, Shaper } from './shape.ts';

/** A stretch of text in one style. */
export interface Span {
  readonly text: string;
  readonly style: Style;
  readonly accent?: boolean;
}

/** A shaped piece at its place in a line: `x` points from the line's left end. */
export interface Placed {
  readonly x: number;
  readonly size: number;
  readonly accent: boolean;
  readonly shaped: Shaped;
}

/** A line of text: its pieces, its plain words, its width in points. */
export interface TextLine {
  readonly pieces: readonly Placed[];
  readonly text: string;
  readonly width: number;
}

/** Composed letters, no invisible formatting characters; every newline kept. */
export function plain(text: string): string {
  return text
    .normalize('NFC')
    .replace(/\p{Default_Ignorable_Code_Point}|[\u200e\u200f\u202a-\u202e]/gu, '')
    .replace(/\u00a0|\u202f/g, '\u00a0')
    .replace(/\r\n?/g, '\n')
    .replace(/\t/g, ' ');
}

/** Sets spans into lines no wider than `width` points at `size` points; a word wider than that is cut. */
export function setLines(shaper: Shaper, spans: readonly Span[], size: number, width: number): readonly TextLine[] {
  const lines: TextLine[] = [];
  let pieces: Placed[] = [];
  let words: string[] = [];
  let at = 0;
  let gap = 0;
  const endLine = (): void => {
    lines.push({ pieces, text: words.join(''), width: at });
    pieces = [];
    words = [];
    at = 0;
    gap = 0;
  };
  const put = (shaped: readonly Shaped[], span: Span): void => {
    if (gap > 0) words.push(' ');
    at += gap;
    gap = 0;
    for (const one of shaped) {
      pieces.push({ x: at, size, accent: span.accent ?? false, shaped: one });
      words.push(one.text);
      at += (one.width * size) / 1000;
    }
  };
  for (const span of spans) {
    const text = plain(span.text);
    const prefer = span.style === 'head' ? shaper.faceFor(text.replace(/\s/g, ''), 'head') : undefined;
    const space = (shaper.spaceWidth(span.style) * size) / 1000;
    for (const token of text.split(/([ \n])/)) {
      if (token === '\n') endLine();
      else if (token === ' ') gap = at > 0 ? space : 0;
      else if (token !== '') {
        let rest = shaper.word(token, span.style, prefer);
        let wide = widthOf(rest, size);
        if (at > 0 && at + gap + wide > width) endLine();
        let left = token;
        while (wide > width && left.length > 1) {
          const head = longestThatFits(shaper, left, span, size, width);
          put(shaper.word(head, span.style, prefer), span);
          endLine();
          left = left.slice(head.length);
          rest = shaper.word(left, span.style, prefer);
          wide = widthOf(rest, size);
        }
        if (left !== '') put(rest, span);
      }
    }
  }
  if (pieces.length > 0 || lines.length === 0) endLine();
  return lines;
}

/** The start of a word that fits the width, at least one character. */
function longestThatFits(shaper: Shaper, word: string, span: Span, size: number, width: number): string {
  const characters = [...word];
  let fits = 1;
  while (
    fits < characters.length &&
    widthOf(shaper.word(characters.slice(0, fits + 1).join(''), span.style, undefined), size) <= width
  )
    fits += 1;
  return characters.slice(0, fits).join('');
}

function widthOf(pieces: readonly Shaped[], size: number): number {
  let total = 0;
  for (const piece of pieces) total += piece.width;
  return (total * size) / 1000;
}

/** Width in points of a text on one line. */
export function textWidth(shaper: Shaper, text: string, style: Style, size: number): number {
  return setLines(shaper, [{ text, style }], size, Number.POSITIVE_INFINITY)[0]?.width ?? 0;
}
