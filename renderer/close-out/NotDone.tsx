import { Button } from '../parts/Button.tsx';
import { Notice } from '../parts/Notice.tsx';
import { wrongSentence } from '../sheet/Wrong.tsx';
import { useWriting } from '../state/shop.ts';
import type { CallError } from '../state/transport.ts';
import { mayPass } from '../state/unsaved.ts';
import { t } from '../words/t.ts';

interface Props {
  /** What did not happen. */
  readonly what: string;
  /** What to say where somebody changed what it was made of. */
  readonly changed: string;
  readonly error: CallError | null;
  /** The same once more, under the same request. */
  readonly onAgain: () => void;
}

/** An oxide line above the foot: what did not happen, why, and the way to try again where that can help. */
export function NotDone({ what, changed, error, onAgain }: Props) {
  const writing = useWriting();
  if (error === null) return null;
  return (
    <Notice
      what={what}
      action={
        mayPass(error) ? (
          <Button small onClick={onAgain}>
            {t('parts.tryAgain')}
          </Button>
        ) : undefined
      }
    >
      {error.code === 'changed-meanwhile' ? changed : wrongSentence(error, writing)}
    </Notice>
  );
}
