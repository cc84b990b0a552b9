import type { PaperLogo } from '../document.ts';
import type { PaperPicture } from '../seen.ts';
import type { Style } from './fonts.ts';
import type { Shaper } from './shape.ts';
import { type Placed, type Span, setLines } from './text.ts';

/** A line of text on a page: `x`, `y` in points from the page's top left corner, y at the foot of the letters. */
export interface TextItem {
  readonly kind: 'text';
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly text: string;
  readonly pieces: readonly Placed[];
}

/** A horizontal rule; `y` is its middle. */
export interface RuleItem {
  readonly kind: 'rule';
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly weight: number;
  readonly accent: boolean;
}

/** The outline of a box, the lines inside its edges. */
export interface FrameItem {
  readonly kind: 'frame';
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A straight line that goes so far across and down. */
export interface LineItem {
  readonly kind: 'line';
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
  readonly weight: number;
}

/** A circle round its middle; `blank` hides what was drawn under it before. */
export interface CircleItem {
  readonly kind: 'circle';
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly weight: number;
  readonly blank: boolean;
}

export interface LogoItem {
  readonly kind: 'logo';
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly logo: PaperLogo;
}

/** A photo, as large as its place allows, upright, at the left of it. */
export interface PictureItem {
  readonly kind: 'picture';
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly picture: PaperPicture;
}

export type Item = TextItem | RuleItem | FrameItem | LineItem | CircleItem | LogoItem | PictureItem;

/** A piece of a paper that is never broken: items measured from its own top left corner. */
export interface Block {
  readonly height: number;
  readonly items: readonly Item[];
  /** Stays on one page with the block after it. */
  readonly keep: boolean;
  /** The job it belongs to; a page that begins inside one names it again. */
  readonly job: JobMark | null;
  /** An opening rule: left out where it would come right under the head of a page. */
  readonly lead: boolean;
  /** Stands at the foot of the last page where there is room. */
  readonly atFoot: boolean;
}

export interface JobMark {
  readonly letter: string;
  readonly title: string;
  /** Whether this block is the job's heading. */
  readonly heads: boolean;
}

/** Sizes in points. Nothing is set smaller than `small`. */
export const SIZE = { title: 30, toPay: 18, garage: 15.75, job: 11, section: 10.5, found: 10.5, body: 10, small: 9 };

/** Points from one line to the next, as a multiple of the size. */
const LEADING = 1.36;
/** Where the foot of the letters stands in a line, from its top. */
const FOOT_OF_LETTERS = 0.98;

export interface TextSetting {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly size: number;
  readonly align?: 'left' | 'right';
  readonly leading?: number;
  /** Where the foot of the first line's letters stands, to share a line with other sizes; else it follows from `y`. */
  readonly foot?: number;
}

export interface SetText {
  readonly items: readonly TextItem[];
  readonly height: number;
}

/** Sets spans as lines below each other from `y` down. */
export function setText(shaper: Shaper, spans: readonly Span[], setting: TextSetting): SetText {
  const { x, y, width, size, align = 'left', leading = LEADING } = setting;
  const step = size * (1 + (leading - 1) * shaper.openness);
  const first = setting.foot ?? y + (step - size * LEADING) / 2 + size * FOOT_OF_LETTERS;
  const lines = setLines(shaper, spans, size, width);
  const items = lines.map(
    (line, index): TextItem => ({
      kind: 'text',
      x: align === 'right' ? x + width - line.width : x,
      y: first + index * step,
      width: line.width,
      text: line.text,
      pieces: line.pieces,
    }),
  );
  return { items, height: lines.length * step };
}

/** One style, no more. */
export function words(text: string, style: Style = 'body', accent = false): readonly Span[] {
  return [{ text, style, accent }];
}

export function rule(x: number, y: number, width: number, weight: number, accent = false): RuleItem {
  return { kind: 'rule', x, y, width, weight, accent };
}

export function block(
  height: number,
  items: readonly Item[],
  more: Partial<Omit<Block, 'height' | 'items'>> = {},
): Block {
  return {
    height,
    items,
    keep: more.keep ?? false,
    job: more.job ?? null,
    lead: more.lead ?? false,
    atFoot: more.atFoot ?? false,
  };
}

/** Moves items by points. */
export function moved(items: readonly Item[], dx: number, dy: number): readonly Item[] {
  return items.map((item) => ({ ...item, x: item.x + dx, y: item.y + dy }));
}

/** Blocks below each other as one that is not broken. */
export function stacked(blocks: readonly Block[]): Block {
  let height = 0;
  const items: Item[] = [];
  for (const one of blocks) {
    items.push(...moved(one.items, 0, height));
    height += one.height;
  }
  return block(height, items);
}
