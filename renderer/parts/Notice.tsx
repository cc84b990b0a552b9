import type { ReactNode } from 'react';
import { useWriting } from '../state/shop.ts';
import type { CallError } from '../state/transport.ts';
import { errorSentence } from '../words/error-sentence.ts';
import { t } from '../words/t.ts';
import { Button } from './Button.tsx';

interface Props {
  /** In bold: what did not happen. */
  readonly what?: string;
  readonly children: ReactNode;
  readonly action?: ReactNode;
}

/** An oxide line above the foot: what, why, what now. */
export function Notice({ what, children, action }: Props) {
  return (
    <div className="notice" role="alert">
      <span>
        {what === undefined ? null : <b>{what} </b>}
        {children}
      </span>
      {action}
    </div>
  );
}

interface NotSavedProps {
  readonly error: CallError | null;
  readonly onAgain?: () => void;
}

/** Something was not saved: its sentence and the way to try again; nothing where all went well. */
export function NotSaved({ error, onAgain }: NotSavedProps) {
  const writing = useWriting();
  if (error === null) return null;
  return (
    <Notice
      what={t('parts.notSaved')}
      action={
        onAgain ? (
          <Button small onClick={onAgain}>
            {t('parts.tryAgain')}
          </Button>
        ) : undefined
      }
    >
      {errorSentence(error, writing)}
    </Notice>
  );
}
