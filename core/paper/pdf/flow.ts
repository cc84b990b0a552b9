import { type Block, type Item, type JobMark, moved } from './block.ts';
import { split } from './split.ts';

/** A laid out page, items in points from its top left corner. */
export interface Page {
  readonly items: readonly Item[];
}

export interface FlowFrame {
  /** Points from the page's top and left to the first block. */
  readonly margin: number;
  /** Lowest point a block may reach. */
  readonly bottom: number;
  /** What a page after the first begins with; `mark` is the job it opens inside, if any. */
  readonly pageHead: (mark: JobMark | null) => readonly Block[];
}

/**
 * Puts blocks below each other on as many pages as they need. Blocks that are kept together move on together, as long
 * as they fit one page; one that is taller than a page goes on on the next. Throws RangeError when a single thing, such as
 * a picture, is.
 */
export function flow(blocks: readonly Block[], frame: FlowFrame): readonly Page[] {
  const pages: Item[][] = [];
  let items: Item[] = [];
  let y = frame.margin;
  let empty = true;
  const put = (one: Block): void => {
    items.push(...moved(one.items, frame.margin, y));
    y += one.height;
  };
  const turn = (mark: JobMark | null): void => {
    pages.push(items);
    items = [];
    y = frame.margin;
    for (const one of frame.pageHead(mark)) put(one);
    empty = true;
  };
  const place = (group: readonly Block[]): void => {
    const first = group[0];
    if (!first) return;
    if (first.lead && empty && pages.length > 0) {
      place(group.slice(1));
      return;
    }
    const height = heightOf(group);
    const blank = group.every((one) => one.items.length === 0);
    if (blank && (empty || y + height > frame.bottom)) return;
    if (y + height > frame.bottom && !empty) {
      turn(first.job);
      place(group);
      return;
    }
    if (y + height > frame.bottom && group.length > 1) {
      for (const one of group) place([one]);
      return;
    }
    if (y + height > frame.bottom) {
      const parts = split(first, frame.bottom - y);
      if (parts === null) throw new RangeError('A part of this paper is taller than a page');
      for (const part of parts) place([part]);
      return;
    }
    if (first.atFoot && !empty) y = frame.bottom - height;
    for (const one of group) put(one);
    empty = false;
  };
  for (const group of groups(blocks)) place(group);
  pages.push(items);
  return pages.map((page) => ({ items: page }));
}

/** Runs of blocks that stay together. */
function groups(blocks: readonly Block[]): readonly (readonly Block[])[] {
  const all: Block[][] = [];
  let open: Block[] = [];
  for (const one of blocks) {
    open.push(one);
    if (one.keep) continue;
    all.push(open);
    open = [];
  }
  if (open.length > 0) all.push(open);
  return all;
}

/** Height in points of blocks below each other. */
export function heightOf(blocks: readonly Block[]): number {
  let height = 0;
  for (const one of blocks) height += one.height;
  return height;
}
