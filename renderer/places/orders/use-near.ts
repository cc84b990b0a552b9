import { type RefObject, useEffect, useState } from 'react';

/** How far above and below what is in view things are made already, in px. */
const BEFOREHAND = '1200px 0px';

/** What scrolls an element: the nearest around it that can. */
export function scrollerOf(element: HTMLElement): HTMLElement {
  for (let at = element.parentElement; at !== null; at = at.parentElement)
    if (/auto|scroll/.test(getComputedStyle(at).overflowY)) return at;
  return document.documentElement;
}

/** Which of the blocks inside (each named by `data-week`) are in view or near it. */
export function useNear(inside: RefObject<HTMLElement | null>, blocks: readonly unknown[]): ReadonlySet<number> {
  const [near, setNear] = useState<ReadonlySet<number>>(new Set());
  useEffect(() => {
    const list = inside.current;
    if (list === null || blocks.length === 0) return;
    const watch = new IntersectionObserver(
      (seen) =>
        setNear((before) => {
          const after = new Set(before);
          for (const { target, isIntersecting } of seen) {
            const name = Number((target as HTMLElement).dataset.week);
            if (isIntersecting) after.add(name);
            else after.delete(name);
          }
          return after;
        }),
      { root: scrollerOf(list), rootMargin: BEFOREHAND },
    );
    for (const block of list.children) watch.observe(block);
    return () => watch.disconnect();
  }, [inside, blocks]);
  return near;
}
