import { useEffect, useRef, useState } from 'react';
import type { PickProps } from './DateField.tsx';
import type { Got } from './use-days.ts';

/**
 * A field whose text is read into a value. What is typed stays as it was typed while the hand is in the field, and after it
 * while it cannot be read; then its sentence stands under it, '' is the value, and the form it stands in is not sent.
 */
export function useTyped(props: PickProps, read: (typed: string) => Got, show: (value: string) => string) {
  const { id, value, onChange, onLeave } = props;
  const own = useRef<HTMLInputElement>(null);
  const [typed, setTyped] = useState<string | null>(null);
  const [sent, setSent] = useState(value);
  const [left, setLeft] = useState(true);
  // Somebody else's change takes the place of what was typed, but never under the hand.
  if (sent !== value) {
    setSent(value);
    if (left) setTyped(null);
  }
  const got: Got = typed === null ? { value } : read(typed);
  const words = 'words' in got ? got.words : null;
  const wrong = left ? words : null;
  useEffect(() => own.current?.setCustomValidity(words ?? ''), [words]);

  const put = (next: string, text: string | null) => {
    setTyped(text);
    setSent(next);
    onChange?.(next);
  };
  const input = {
    ref: (node: HTMLInputElement | null) => {
      own.current = node;
      if (typeof props.ref === 'function') props.ref(node);
      else if (props.ref) props.ref.current = node;
    },
    id,
    className: wrong === null ? props.className : `${props.className} wrong`,
    value: typed ?? show(value),
    readOnly: props.readOnly,
    required: props.required,
    autoComplete: 'off',
    'data-unread': words === null ? undefined : true,
    'aria-invalid': props.invalid || wrong !== null || undefined,
    'aria-describedby': `${props.describedBy ?? ''} ${id}-read`.trim(),
    onChange: (event: React.ChangeEvent<HTMLInputElement>) => {
      const next = read(event.target.value);
      setLeft(false);
      put('value' in next ? next.value : '', event.target.value);
    },
    // The sentence under the field says it, in the shop's own place, instead of the browser's bubble.
    onInvalid: (event: React.InvalidEvent<HTMLInputElement>) => {
      if (words === null) return;
      event.preventDefault();
      setLeft(true);
      own.current?.focus();
    },
    onBlur: () => {
      setLeft(true);
      if (words !== null) return;
      setTyped(null);
      onLeave?.();
    },
  };
  return { own, input, typed, got, wrong, put };
}
