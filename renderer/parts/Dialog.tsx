import { type ReactNode, useEffect, useId, useRef } from 'react';
import { useKey } from '../frame/keys.ts';
import { t } from '../words/t.ts';
import { Button } from './Button.tsx';

interface Props {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
  /** Buttons at the foot, beside the one that closes. */
  readonly actions?: ReactNode;
}

/** A sheet over the page, for the few things that cannot stand beside it. The browser's own dialog keeps the focus in. */
export function Dialog({ title, onClose, children, actions }: Props) {
  const id = useId();
  const dialog = useRef<HTMLDialogElement>(null);
  // Before the page behind it: its own Esc stays where it is.
  useKey('Esc', onClose);
  useEffect(() => {
    const node = dialog.current;
    node?.showModal();
    return () => node?.close();
  }, []);
  return (
    <dialog ref={dialog} className="dialog" aria-labelledby={id} onClose={onClose}>
      <h2 id={id}>{title}</h2>
      {children}
      <div className="dialog-foot">
        {actions}
        <Button onClick={onClose}>{t('frame.close')}</Button>
      </div>
    </dialog>
  );
}
