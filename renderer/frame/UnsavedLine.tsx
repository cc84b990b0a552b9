import { Button } from '../parts/Button.tsx';
import { useWriting } from '../state/shop.ts';
import { useUnsaved } from '../state/unsaved.ts';
import { errorSentence } from '../words/error-sentence.ts';
import { t } from '../words/t.ts';

/** The oxide line above the foot while something typed in a cell could not be saved: why, and one press for all of it. */
export function UnsavedLine() {
  const writing = useWriting();
  const all = [...useUnsaved((state) => state.cells).values()];
  const last = all.at(-1);
  if (last === undefined) return null;
  return (
    <div className="notice unsaved" role="alert">
      <span>
        <b>{t('parts.notSaved')}</b> {errorSentence(last.error, writing)} {t('parts.wordsStay')}
      </span>
      <Button
        small
        onClick={() => {
          for (const one of all) one.again();
        }}
      >
        {t('parts.tryAgain')}
      </Button>
    </div>
  );
}
