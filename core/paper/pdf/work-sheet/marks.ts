import { type Item, type LineItem, rule, SIZE, type TextItem, words } from '../block.ts';
import type { Style } from '../fonts.ts';
import type { Shaper } from '../shape.ts';
import { type Span, setLines } from '../text.ts';

/** Side of a box to tick: 21 px at 96 to the inch, in points. */
export const BOX = 15.75;

/** The outline of a box to tick; one that is ticked already is crossed. */
export function box(x: number, y: number, ticked = false): readonly Item[] {
  const frame: Item = { kind: 'frame', x, y, width: BOX, height: BOX };
  if (!ticked) return [frame];
  const inner = BOX - 7;
  return [frame, line(x + 3.5, y + 3.5, inner, inner, 1.2), line(x + 3.5, y + BOX - 3.5, inner, -inner, 1.2)];
}

export function line(x: number, y: number, dx: number, dy: number, weight: number): LineItem {
  return { kind: 'line', x, y, dx, dy, weight };
}

/** A line to write on. */
export const blank = (x: number, y: number, width: number): Item => rule(x, y, width, 0.9);

/** Spans on one line with their letters' foot at `y`; what is wider than `width` is left out. */
export function oneLine(shaper: Shaper, spans: readonly Span[], size: number, x: number, y: number): TextItem {
  const set = setLines(shaper, spans, size, Number.POSITIVE_INFINITY)[0];
  return { kind: 'text', x, y, width: set?.width ?? 0, text: set?.text ?? '', pieces: set?.pieces ?? [] };
}

/** A short text in the middle of `x`. */
export function centred(shaper: Shaper, text: string, x: number, y: number, style: Style = 'body'): TextItem {
  const item = oneLine(shaper, words(text, style), SIZE.small, 0, y);
  return { ...item, x: x - item.width / 2 };
}

/** The sign of a caution: a triangle with its stroke and point, no fill. */
export function warning(x: number, y: number): readonly Item[] {
  return [
    line(x + 10, y, 10, 17.5, 1.3),
    line(x + 20, y + 17.5, -20, 0, 1.3),
    line(x, y + 17.5, 10, -17.5, 1.3),
    line(x + 10, y + 6, 0, 6, 1.6),
    { kind: 'circle', x: x + 10, y: y + 14.6, radius: 0.5, weight: 1, blank: false },
  ];
}
