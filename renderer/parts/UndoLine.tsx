import type { ReactNode } from 'react';
import { t } from '../words/t.ts';

interface Props {
  /** What is gone, struck. */
  readonly gone: ReactNode;
  readonly children: ReactNode;
  readonly onUndo: () => void;
  /** What was done last: Ctrl Z brings this back. */
  readonly last: boolean;
}

/** A dashed line where the row was, until one leaves the page. */
export function UndoLine({ gone, children, onUndo, last }: Props) {
  return (
    <div className="undo">
      <span>
        <s>{gone}</s> {children}
      </span>
      <button type="button" className="link" onClick={onUndo}>
        {t('parts.putBack')} {last ? <span className="key">Ctrl Z</span> : null}
      </button>
    </div>
  );
}
