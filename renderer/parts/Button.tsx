import { type ReactNode, type Ref, useId } from 'react';
import { type Combo, keyName } from '../frame/key-map.ts';
import { t } from '../words/t.ts';
import { holdUnread } from './unread.ts';

interface Props {
  readonly children: ReactNode;
  readonly onClick?: () => void;
  /** go: the one main action in view. */
  readonly kind?: 'plain' | 'go';
  readonly small?: boolean;
  /** Why it is held; the button stays in place, dashed, and the reason stands beside it. */
  readonly held?: ReactNode;
  /** The key that does the same, shown on the button. */
  readonly keys?: Combo;
  readonly type?: 'button' | 'submit';
  /** While it is under way: it does nothing, and keeps the focus, so that the keys go on from where they are. */
  readonly disabled?: boolean;
  readonly label?: string;
  /** For buttons that open something. */
  readonly expanded?: boolean;
  readonly ref?: Ref<HTMLButtonElement>;
}

/** A verb to press. */
export function Button({
  children,
  onClick,
  kind = 'plain',
  small = false,
  held,
  keys,
  type = 'button',
  disabled = false,
  label,
  expanded,
  ref,
}: Props) {
  const why = useId();
  const isHeld = held !== undefined && held !== null;
  const look = ['button', kind === 'go' && !isHeld ? 'go' : '', small ? 'less' : '', isHeld ? 'off' : '']
    .join(' ')
    .trim();
  const button = (
    <button
      ref={ref}
      type={isHeld ? 'button' : type}
      className={look}
      aria-disabled={isHeld || disabled || undefined}
      aria-describedby={isHeld ? why : undefined}
      aria-label={label}
      aria-expanded={expanded}
      onClick={(event) => {
        if (disabled || isHeld || (kind === 'go' && holdUnread())) event.preventDefault();
        else onClick?.();
      }}
    >
      {children}
      {keys === undefined || isHeld ? null : (
        <span className="key" aria-hidden="true">
          {keyName(keys)}
        </span>
      )}
    </button>
  );
  if (!isHeld) return button;
  return (
    <span className="held">
      {button}
      <span id={why}>
        <b>{t('parts.held')}</b> {held}
      </span>
    </span>
  );
}
