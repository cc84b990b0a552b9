import type { ReactNode } from 'react';

/** A cell with its name over it; the cell says its own name aloud. */
export function Named({ words, children, wide = false }: { words: string; children: ReactNode; wide?: boolean }) {
  return (
    <span className={wide ? 'named wide' : 'named'}>
      <span aria-hidden="true">{words}</span>
      {children}
    </span>
  );
}
