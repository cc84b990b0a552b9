import { useEffect } from 'react';
import { create } from 'zustand';
import { useMachine } from '../state/machine.ts';

/** tablet: up to 1000 units wide; narrow: up to 1360; wide from 1700. A unit is a pixel at the usual text size. */
export type Width = 'tablet' | 'narrow' | 'usual' | 'wide';

/** The width class of so many pixels at a text size in percent: larger text leaves less room. */
export function widthOf(pixels: number, textSize: number): Width {
  const units = (pixels * 100) / textSize;
  if (units <= 1000) return 'tablet';
  if (units <= 1360) return 'narrow';
  return units < 1700 ? 'usual' : 'wide';
}

export const useWidth = create<{ readonly width: Width }>(() => ({ width: 'usual' }));

/** Puts light, text size and width class on the root, where the style sheets read them. */
export function useLookOfMachine(): void {
  const { light, textSize } = useMachine();
  useEffect(() => {
    const root = document.documentElement;
    root.dataset.light = light;
    root.style.fontSize = `${textSize}%`;
    const measure = () => {
      const width = widthOf(window.innerWidth, textSize);
      root.dataset.width = width;
      useWidth.setState({ width });
    };
    measure();
    window.addEventListener('resize', measure);
    return () => window.removeEventListener('resize', measure);
  }, [light, textSize]);
}
