import { useEffect, useRef } from 'react';

/**
 * What was mended is gone from the list, and the hand with it: it goes to what stops the invoice next, or to the main
 * action where nothing does.
 */
export function useNextControl(open: number | undefined, main: { readonly current: HTMLElement | null }): void {
  const before = useRef(open);
  useEffect(() => {
    const fewer = before.current !== undefined && open !== undefined && open < before.current;
    before.current = open;
    if (!fewer || document.activeElement !== document.body) return;
    const next = document.querySelector<HTMLElement>('.before-mend :is(input, button), .way-out button');
    (next ?? main.current)?.focus();
  }, [open, main]);
}
