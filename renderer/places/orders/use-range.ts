import { type RefObject, useEffect, useState } from 'react';
import type { Week } from './OrderWeek.tsx';
import { scrollerOf } from './use-near.ts';

/** Which rows are in view, counted from 1, and the week at the top of it. */
export interface Range {
  readonly first: number;
  readonly last: number;
  readonly week: number;
}

/** Counts what is in view of a list of weeks while it is scrolled. A week's rows are taken to be equally high. */
export function useRange(inside: RefObject<HTMLElement | null>, weeks: readonly Week[]): Range | null {
  const [range, setRange] = useState<Range | null>(null);
  useEffect(() => {
    const list = inside.current;
    if (list === null) return;
    const scroller = scrollerOf(list);
    const count = () => {
      const { top, bottom } = scroller.getBoundingClientRect();
      const blocks = [...list.querySelectorAll('[data-week]')].map((block) => block.getBoundingClientRect());
      const rowAt = (y: number) => {
        let before = 0;
        for (const [at, { top: begins, height }] of blocks.entries()) {
          const n = weeks[at]?.n ?? 0;
          if (y < begins + height) return { row: before + Math.max(0, ((y - begins) / height) * n), at };
          before += n;
        }
        return { row: before, at: blocks.length - 1 };
      };
      // What was gone to stands at a whole pixel or a part of one below the edge: what is left of the week above is not in view.
      const [first, last] = [rowAt(top + 1), rowAt(bottom)];
      const total = weeks.reduce((sum, { n }) => sum + n, 0);
      setRange({
        first: Math.min(total, Math.floor(first.row) + 1),
        last: Math.min(total, Math.ceil(last.row)),
        week: weeks[Math.max(0, first.at)]?.from ?? 0,
      });
    };
    let soon = 0;
    const later = () => {
      cancelAnimationFrame(soon);
      soon = requestAnimationFrame(count);
    };
    later();
    scroller.addEventListener('scroll', later, { passive: true });
    const resized = new ResizeObserver(later);
    resized.observe(list);
    return () => {
      cancelAnimationFrame(soon);
      scroller.removeEventListener('scroll', later);
      resized.disconnect();
    };
  }, [inside, weeks]);
  return range;
}
