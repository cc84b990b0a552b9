import { type RefObject, useEffect, useRef, useState } from 'react';
import { useKey } from '../frame/keys.ts';

const CONTROL = ':is(input, button, select, textarea):not(:disabled)';

/** What opens where a button stood: the hand goes to its first control, and Esc folds it again. */
export function useUnfolded<T extends HTMLElement>(fold: () => void): RefObject<T | null> {
  const unfolded = useRef<T>(null);
  useEffect(() => unfolded.current?.querySelector<HTMLElement>(CONTROL)?.focus(), []);
  useKey('Esc', fold);
  return unfolded;
}

interface Fold {
  readonly open: boolean;
  readonly unfold: () => void;
  readonly fold: () => void;
  /** For the button that opens it: the hand comes back there. */
  readonly opener: RefObject<HTMLButtonElement | null>;
}

/** Whether something is open that a button opens in its own place. */
export function useFold(): Fold {
  const opener = useRef<HTMLButtonElement>(null);
  const [open, setOpen] = useState(false);
  const fold = () => {
    setOpen(false);
    setTimeout(() => opener.current?.focus());
  };
  return { open, unfold: () => setOpen(true), fold, opener };
}
