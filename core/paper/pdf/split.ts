import { type Block, block, type Item, moved } from './block.ts';

/** How far letters reach above and below the line that they stand on, as a multiple of their size. */
const ABOVE = 1;
const BELOW = 0.3;

const sizeOf = (item: Item): number => (item.kind === 'text' ? Math.max(0, ...item.pieces.map(({ size }) => size)) : 0);

/** Where an item ends at its top and at its foot, in points from the top of its block. */
function reach(item: Item): readonly [top: number, foot: number] {
  switch (item.kind) {
    case 'text':
      return [item.y - ABOVE * sizeOf(item), item.y + BELOW * sizeOf(item)];
    case 'line':
      return [Math.min(item.y, item.y + item.dy), Math.max(item.y, item.y + item.dy)];
    case 'circle':
      return [item.y - item.radius, item.y + item.radius];
    case 'rule':
      return [item.y, item.y];
    default:
      return [item.y, item.y + item.height];
  }
}

/**
 * A block in two, for one that is taller than a page: what ends within `room` points, and the rest. Null where nothing of it
 * does.
 */
export function split(one: Block, room: number): readonly [Block, Block] | null {
  // What begins after the first thing that does not fit goes with it, so that the order stays.
  const over = one.items.filter((item) => reach(item)[1] > room).map((item) => reach(item)[0]);
  const cut = Math.min(...over);
  const first = one.items.filter((item) => reach(item)[1] <= Math.min(cut + 0.5, room));
  const rest = one.items.filter((item) => !first.includes(item));
  if (first.length === 0 || rest.length === 0) return null;
  const top = Math.min(...rest.map((item) => reach(item)[0]));
  return [
    block(Math.max(...first.map((item) => reach(item)[1])) - 1e-6, first, { ...one, keep: false }),
    { ...one, items: moved(rest, 0, -top), height: one.height - top, lead: false },
  ];
}
