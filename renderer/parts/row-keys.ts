import type { RefObject } from 'react';
import { useKey } from '../frame/keys.ts';

/** Up and Down go from row to row of a list: the links in it that `which` names. */
export function useRowKeys(list: RefObject<HTMLElement | null>, which: string): void {
  const step = (by: number) => {
    const rows = [...(list.current?.querySelectorAll<HTMLAnchorElement>(which) ?? [])];
    const at = rows.findIndex((row) => row.matches(':focus'));
    rows[at < 0 ? 0 : (at + by + rows.length) % rows.length]?.focus();
  };
  useKey('ArrowDown', () => step(1));
  useKey('ArrowUp', () => step(-1));
}
