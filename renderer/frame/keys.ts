import { useEffect, useRef, useState } from 'react';
import { holdUnread } from '../parts/unread.ts';
import { useMachine } from '../state/machine.ts';
import { type Combo, isCombo } from './key-map.ts';

type Run = (event: KeyboardEvent) => void;

/** The one rendered last stands on top: a form in view answers before its page, the page before the frame. */
const stack: { readonly order: number; readonly combo: Combo; readonly run: { readonly current: Run } }[] = [];

let rendered = 0;

type Pressed = Pick<KeyboardEvent, 'key' | 'code' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>;

/**
 * What was pressed, by its name in the map of keys; null where the map does not have it, so that nothing else acts. Alt
 * reads the key's place, since some keyboards make other signs with it. Shift counts with Enter alone: elsewhere it is
 * part of the sign.
 */
export function comboOf(event: Pressed): Combo | null {
  const held = `${event.ctrlKey || event.metaKey ? 'Ctrl+' : ''}${event.altKey ? 'Alt+' : ''}`;
  const letter = /^(?:Key|Digit)(.)$/.exec(event.code)?.[1];
  const key = event.key === ' ' ? 'Space' : event.key === 'Escape' ? 'Esc' : event.key;
  const sign = event.altKey && letter !== undefined ? letter : key.length === 1 ? key.toUpperCase() : key;
  const shifted = event.shiftKey && sign === 'Enter' ? 'Shift+' : '';
  const name = held + shifted + sign;
  return isCombo(name) ? name : null;
}

const TYPING =
  'input:not([type="checkbox"], [type="radio"], [type="button"]), textarea, select, [contenteditable="true"]';
const OWN_SPACE = 'button, a, summary, input, [role="button"], [role="checkbox"], [role="radio"], [role="option"]';

/** Whether a key may act now: single signs only when no field has focus and they are not turned off. */
export function mayAct(combo: Combo, target: Element | null, letters: boolean): boolean {
  const typing = target?.closest(TYPING) !== null && target !== null;
  if (combo.length === 1) return letters && !typing;
  if (combo === 'Space' || combo === 'Enter') return !typing && !target?.closest(OWN_SPACE);
  if (combo === 'ArrowUp' || combo === 'ArrowDown' || combo === 'PageDown' || combo === 'PageUp') return !typing;
  // In a field where something was typed, it undoes the typing.
  if (combo === 'Ctrl+Z') return !typing || target?.closest('[data-untyped]') !== null;
  return true;
}

function onKeyDown(event: KeyboardEvent): void {
  if (event.defaultPrevented || event.isComposing) return;
  const combo = comboOf(event);
  if (combo === null) return;
  const found = stack.findLast((entry) => entry.combo === combo);
  const target = event.target instanceof Element ? event.target : null;
  if (found === undefined || !mayAct(combo, target, useMachine.getState().letters)) return;
  // A dialog in view keeps the keys of the page behind it quiet; one that is left with its page is open yet, but hidden,
  // until the next page has come.
  const dialog = [...document.querySelectorAll('dialog[open]')].find((one) => one.checkVisibility());
  if (dialog !== undefined && !dialog.contains(target) && combo !== 'Esc') return;
  event.preventDefault();
  if (combo === 'Ctrl+Enter' && holdUnread()) return;
  found.run.current(event);
}

/** Starts listening; returns how to stop. */
export function listenToKeys(): () => void {
  window.addEventListener('keydown', onKeyDown);
  return () => window.removeEventListener('keydown', onKeyDown);
}

/** A key while the component stands. The latest component to ask for a key has it. */
export function useKey(combo: Combo, run: Run, when = true): void {
  // Parents render before their children, but their effects run after them: the order is that of rendering.
  const [order] = useState(() => ++rendered);
  const latest = useRef(run);
  latest.current = run;
  useEffect(() => {
    if (!when) return;
    const entry = { order, combo, run: latest };
    stack.push(entry);
    stack.sort((a, b) => a.order - b.order);
    return () => {
      stack.splice(stack.indexOf(entry), 1);
    };
  }, [order, combo, when]);
}
