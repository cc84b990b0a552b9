/** How long a week that was gone to is held at the top, in milliseconds. */
const HELD = 2000;

const MOVES = ['wheel', 'pointerdown', 'keydown', 'touchstart'] as const;

let letGo = () => {};

/**
 * Goes to a week of the list and holds it there while the weeks round it are made: they take the room that they need, which
 * was only reckoned before. Whoever moves on meanwhile is let go.
 */
export function goToWeek(list: HTMLElement, week: number): void {
  letGo();
  const block = list.querySelector(`[data-week="${week}"]`);
  if (block === null) return;
  block.scrollIntoView();
  const watch = new ResizeObserver(() => block.scrollIntoView());
  watch.observe(list);
  const stop = () => {
    watch.disconnect();
    clearTimeout(end);
    for (const move of MOVES) window.removeEventListener(move, stop, true);
  };
  const end = setTimeout(stop, HELD);
  for (const move of MOVES) window.addEventListener(move, stop, true);
  letGo = stop;
}
