import type { ReactNode } from 'react';
import { useKey } from '../frame/keys.ts';
import { t } from '../words/t.ts';

interface Props {
  /** What is gone, struck. */
  readonly gone?: ReactNode;
  readonly children: ReactNode;
  /** Absent where a thing is followed, never undone. */
  readonly onUndo?: () => void;
}

const nothing = () => {};

/** A dashed line where the row was, until one leaves the page. */
export function UndoLine({ gone, children, onUndo }: Props) {
  useKey('Ctrl+Z', onUndo ?? nothing, onUndo !== undefined);
  return (
    <div className="undo">
      <span>
        {gone === undefined ? null : <s>{gone}</s>} {children}
      </span>
      {onUndo === undefined ? null : (
        <button type="button" className="link" onClick={onUndo}>
          {t('parts.putBack')} <kbd>Ctrl Z</kbd>
        </button>
      )}
    </div>
  );
}
