import { useState } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { Button } from '../../parts/Button.tsx';
import { Notice, NotSaved } from '../../parts/Notice.tsx';
import { useWriting } from '../../state/shop.ts';
import { useDo } from '../../state/use-do.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { t } from '../../words/t.ts';
import { civilText } from '../../words/times.ts';
import { StatementRows } from './StatementRows.tsx';
import { useStatementFile } from './statement-file.ts';

type Run = NonNullable<OutputOf<'statement.run'>['run']>;

/** The last run: how far it is, what was left out, its statements and how each was sent. */
export function StatementRun({ run }: { readonly run: Run }) {
  const writing = useWriting();
  const file = useStatementFile(run.runId);
  const day = civilText(run.until, writing);
  const unsent = run.rows.filter((row) => row.sent.length === 0).length;
  // Folded only where nothing is left to do when it is come to; what is being worked at stays in sight.
  const [open, show] = useState(unsent > 0);
  return (
    <section className="statement-run" aria-label={t('statement.run')}>
      <HowFar run={run} day={day} />
      {run.failed === null ? null : <Notice>{t(`statement.failed-${run.failed}`)}</Notice>}
      {run.leftOut.map(({ customerId, customer, characters }) => (
        <Notice key={customerId}>{t('statement.leftOut', { name: customer, characters })}</Notice>
      ))}
      {file.error === null ? null : <Notice>{errorSentence(file.error, writing)}</Notice>}
      {run.files.length === 0 ? null : <p className="small ink-2">{t('statement.folder', { folder: run.folder })}</p>}
      {run.joined ? (
        <p className="statement-files">
          {run.files.map((name) => (
            <button key={name} type="button" className="link" onClick={() => file.open(name)}>
              {t('statement.file', { name })}
            </button>
          ))}
        </p>
      ) : null}
      {unsent > 0 ? null : (
        <p>
          {t('statement.allSent')}{' '}
          <button type="button" className="link" aria-expanded={open} onClick={() => show(!open)}>
            {t(open ? 'statement.fold' : 'statement.unfold')}
          </button>
        </p>
      )}
      {open || unsent > 0 ? (
        <StatementRows
          label={t('statement.runRows', { day })}
          {...{ until: run.until, rows: run.rows, joined: run.joined }}
          onFile={file.open}
        />
      ) : null}
    </section>
  );
}

/** Counts, time left, and the way to stop after the one in hand and to go on from there. */
function HowFar({ run, day }: { readonly run: Run; readonly day: string }) {
  const stop = useDo('statement.stop');
  const goOn = useDo('statement.goOn');
  const { runId, made, of, running, stopping } = run;
  const whole = made >= of;
  const left = secondsLeft(run);
  return (
    <>
      <div className="statement-far">
        <p role="status">
          <b>
            {t(running ? 'statement.making' : whole ? 'statement.allMade' : 'statement.stopped', {
              day,
              made,
              of,
              n: of,
            })}
          </b>
          {running ? <span>{t('statement.done', { made })}</span> : null}
          {running && left !== null ? <span>{t('statement.timeLeft', { seconds: left })}</span> : null}
          {stopping ? <span>{t('statement.stopping')}</span> : null}
        </p>
        {whole && !running ? null : (
          <progress
            className={running ? undefined : 'stopped'}
            max={of}
            value={made}
            aria-label={t('statement.progress')}
          />
        )}
        {running ? (
          <p>
            <span className="ink-2">{t('statement.goOnWorking')}</span>
            <Button small disabled={stopping} onClick={() => void stop.run({ runId })}>
              {t('statement.stop')}
            </Button>
          </p>
        ) : null}
        {running || whole ? null : (
          <p>
            <Button small disabled={goOn.busy} onClick={() => void goOn.run({ runId })}>
              {t('statement.goOn', { n: made + 1 })}
            </Button>
          </p>
        )}
      </div>
      <NotSaved error={stop.error} onAgain={() => void stop.again()} />
      <NotSaved error={goOn.error} onAgain={() => void goOn.again()} />
    </>
  );
}

/** By what this stretch of the work took so far, in seconds; null: it cannot be told yet. */
function secondsLeft({ spent, made, madeBefore, of }: Run): number | null {
  const done = made - madeBefore;
  if (spent === null || done <= 0) return null;
  return Math.max(1, Math.ceil((spent / done) * (of - made) * 0.001));
}
