import { useEffect, useRef } from 'react';
import type { Combo } from '../../frame/key-map.ts';
import { comboOf } from '../../frame/keys.ts';
import type { Step } from './plan.ts';
import type { Done, Hand } from './use-plan.ts';

const STEPS: Readonly<Partial<Record<Combo, Step>>> = {
  ArrowLeft: 'earlier',
  ArrowRight: 'later',
  ArrowUp: 'up',
  ArrowDown: 'down',
};

/**
 * The arrows move what is in hand, Enter puts it down: from the booking itself, or where nothing has the focus (its week
 * was left). In a field and on any other button the keys stay what they are.
 */
export function useHandKeys(hand: Hand | null, onStep: (step: Step) => void, onSave: () => void): void {
  const latest = useRef({ onStep, onSave });
  latest.current = { onStep, onSave };
  const held = hand?.one?.id ?? null;
  useEffect(() => {
    if (held === null) return;
    const onKey = (event: KeyboardEvent) => {
      const at = event.target instanceof Element ? event.target : null;
      const free = at === document.body || at?.getAttribute('data-booking') === held;
      const combo = comboOf(event);
      if (!free || combo === null) return;
      const step = STEPS[combo];
      if (step === undefined && combo !== 'Enter') return;
      event.preventDefault();
      event.stopPropagation();
      if (step !== undefined) latest.current.onStep(step);
      else latest.current.onSave();
    };
    window.addEventListener('keydown', onKey, { capture: true });
    return () => window.removeEventListener('keydown', onKey, { capture: true });
  }, [held]);
}

/**
 * What was moved has the focus again where it stands now. It is drawn anew there once the shop has told the new list, and
 * takes the focus only where nothing else has it by then.
 */
export function useFocusOnMoved(done: Done | null, listed: unknown): void {
  useEffect(() => {
    // Asked again with every new list.
    void listed;
    if (done === null || (document.activeElement ?? document.body) !== document.body) return;
    document.querySelector<HTMLElement>(`[data-booking="${done.id}"]`)?.focus({ preventScroll: true });
  }, [done, listed]);
}
