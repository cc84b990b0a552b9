import { useState } from 'react';
import { thingsToMend } from '../../../core/bench/procedure-check.ts';
import { PrintBenchCopy } from '../../bench/PrintBenchCopy.tsx';
import { Button } from '../../parts/Button.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { UndoLine } from '../../parts/UndoLine.tsx';
import { t } from '../../words/t.ts';
import type { BookJob } from './draft.ts';
import { PutOn } from './PutOn.tsx';
import type { JobDraft } from './use-job-draft.ts';

interface Props {
  readonly kept: BookJob | null;
  readonly job: JobDraft;
  readonly mayChange: boolean;
  /** What was just done. */
  readonly said: string;
  readonly onKeep: (as: 'draft' | 'use') => void;
  readonly onDrop: () => void;
  readonly onUndo: () => void;
}

/** Under the job: what orders keep, and what can be done with what is written. */
export function JobFoot({ kept, job, mayChange, said, onKeep, onDrop, onUndo }: Props) {
  const { content, warnings, version, inUse, changed, meanwhile, gone, save } = job;
  const [putting, setPutting] = useState(false);
  const keeps = thingsToMend(warnings.filter((warning) => warning.keepsFromBench));
  const untitled = content.title.trim() === '' ? t('jobBook.titleNeeded') : null;
  const waits = kept !== null && version !== inUse;
  const notOnSheet = changed ? t('jobBook.putOnHeld') : inUse === 0 ? t('jobBook.putOnDraft') : null;
  return (
    <section className="foot" aria-label={t('jobBook.keepsVersion')}>
      <div className="foot-words">
        {putting && kept !== null ? (
          <PutOn bookJobId={kept.id} goesWith={kept.content.goesWith} onClose={() => setPutting(false)} />
        ) : (
          <>
            {gone === null ? (
              <b>{t('jobBook.keepsVersion')}</b>
            ) : (
              <UndoLine gone={gone.words} last onUndo={onUndo}>
                {t('jobBook.wasTakenOut')}
              </UndoLine>
            )}
            <span role="status">{said}</span>
            {meanwhile ? <span className="in-stop"> {t('jobBook.meanwhile', { n: version })}</span> : null}
            {meanwhile ? null : <NotSaved error={save.error} onAgain={() => void save.again()} />}
          </>
        )}
      </div>
      <div className="foot-actions">
        {kept === null || putting || changed ? null : <PrintBenchCopy of={{ versionId: kept.versionId }} />}
        {!mayChange || kept === null || putting || changed ? null : (
          <Button held={notOnSheet} onClick={() => setPutting(true)}>
            {t('jobBook.putOn')}
          </Button>
        )}
        {mayChange && changed ? <Button onClick={onDrop}>{t('jobBook.drop')}</Button> : null}
        {mayChange && (changed || kept === null) ? (
          <Button held={untitled} disabled={save.busy} onClick={() => onKeep('draft')}>
            {t('jobBook.keepDraft')}
          </Button>
        ) : null}
        {mayChange && (changed || kept === null || waits) ? (
          <Button
            kind="go"
            keys="Ctrl+Enter"
            held={untitled ?? (keeps > 0 ? t('jobBook.toMend', { n: keeps }) : null)}
            disabled={save.busy}
            onClick={() => onKeep('use')}
          >
            {meanwhile ? t('jobBook.useOver', { n: version + 1 }) : t('jobBook.use', { n: version + 1 })}
          </Button>
        ) : null}
      </div>
    </section>
  );
}
