import { UndoLine } from '../parts/UndoLine.tsx';
import { useDo } from '../state/use-do.ts';
import { t } from '../words/t.ts';
import { rememberTakenOut, useTakenOut } from './taken-out.ts';
import { Wrong } from './Wrong.tsx';

/** The line or job taken off this sheet last, and the way back. */
export function PutBack({ orderId }: { readonly orderId: string }) {
  const last = useTakenOut((state) => state.last);
  const line = useDo('line.putBack');
  const job = useDo('job.putBack');
  if (last === null || last.orderId !== orderId) return null;
  const undo = async () => {
    const answer = await (last.kind === 'line' ? line : job).run({ id: last.id, revision: last.revision });
    if (answer.ok) rememberTakenOut(null);
  };
  return (
    <>
      <UndoLine gone={last.words} onUndo={() => void undo()}>
        {t('sheet.wasTakenOut')}
      </UndoLine>
      <Wrong error={line.error ?? job.error} />
    </>
  );
}
