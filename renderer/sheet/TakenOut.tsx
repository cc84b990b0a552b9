import { useEffect } from 'react';
import { useKey } from '../frame/keys.ts';
import { UndoLine } from '../parts/UndoLine.tsx';
import { t } from '../words/t.ts';
import { forgetUndo, undo, undoLast, useUndo } from './undo.ts';
import { Wrong } from './Wrong.tsx';

/** Dashed lines where something was taken out, each with its way back. `at`: a job's id, or 'sheet'. */
export function TakenOut({ at }: { readonly at: string }) {
  const stack = useUndo((state) => state.stack);
  const here = stack.filter((one) => one.at === at);
  return here.map((one, place) => (
    <UndoLine
      key={`${one.words} ${here.slice(0, place).filter((other) => other.words === one.words).length}`}
      gone={one.words}
      last={one === stack.at(-1)}
      onUndo={() => void undo(one)}
    >
      {t('sheet.wasTakenOut')}
    </UndoLine>
  ));
}

/** Ctrl Z on a sheet undoes what was done last at this window, and says so; leaving the page forgets. */
export function UndoKey() {
  const { stack, said, error } = useUndo();
  useKey('Ctrl+Z', () => void undoLast(), stack.length > 0);
  useEffect(() => forgetUndo, []);
  return (
    <>
      <p className="undone small ink-2" role="status">
        {said === null ? '' : t('sheet.undone', { words: said })}
      </p>
      <Wrong error={error} />
    </>
  );
}
