import { type RefObject, useEffect, useState } from 'react';

/** How wide a place is in pixels, and how large a rem is beside the usual 16: what is drawn is drawn to both. */
export function useMeasured(place: RefObject<HTMLElement | null>): { width: number; scale: number } {
  const [measured, setMeasured] = useState({ width: 0, scale: 1 });
  useEffect(() => {
    const node = place.current;
    if (node === null) return;
    const measure = () =>
      setMeasured({
        width: node.clientWidth,
        scale: Number.parseFloat(getComputedStyle(document.documentElement).fontSize) / 16,
      });
    measure();
    const watcher = new ResizeObserver(measure);
    watcher.observe(node);
    return () => watcher.disconnect();
  }, [place]);
  return measured;
}
