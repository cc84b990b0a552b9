import { useState } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { savePdf } from '../../bench/save-pdf.ts';
import { hrefOf } from '../../frame/router.ts';
import { Button } from '../../parts/Button.tsx';
import { Empty } from '../../parts/Empty.tsx';
import { Field } from '../../parts/Field.tsx';
import { Loading } from '../../parts/Loading.tsx';
import { Notice, NotSaved } from '../../parts/Notice.tsx';
import { ask } from '../../state/call.ts';
import { useNow } from '../../state/now.ts';
import { useWriting } from '../../state/shop.ts';
import type { CallError } from '../../state/transport.ts';
import { useAsk } from '../../state/use-ask.ts';
import { useDo } from '../../state/use-do.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { amountText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { civilText, nearText } from '../../words/times.ts';

type Run = NonNullable<OutputOf<'statement.run'>['run']>;

/** Who owes on a day, and a statement for each of them. */
export function Statements() {
  const writing = useWriting();
  const now = useNow(60_000);
  const [day, setDay] = useState('');
  const until = /^\d{4}-\d{2}-\d{2}$/.test(day) ? day : null;
  const { data, error, loading } = useAsk('statement.owing', { until });
  const last = useAsk('statement.run', {});
  const start = useDo('statement.start');
  const run = last.data?.run ?? null;
  const rows = data?.rows ?? [];
  const busy = start.busy || run?.running === true;
  return (
    <section aria-label={t('statement.owing')}>
      <div className="row-form">
        <Field label={t('statement.until')} type="date" value={day || (data?.until ?? '')} onChange={setDay} />
        {rows.length === 0 ? null : (
          <>
            <Button disabled={busy} onClick={() => void start.run({ until })}>
              {t('statement.start')}
            </Button>
            <Button disabled={busy} onClick={() => void start.run({ until, joined: true })}>
              {t('statement.startJoined')}
            </Button>
          </>
        )}
      </div>
      {error === null ? null : <Notice>{errorSentence(error, writing)}</Notice>}
      <NotSaved error={start.error} onAgain={() => void start.again()} />
      {run === null ? null : <RunPart run={run} />}
      {loading ? <Loading rows={6} /> : null}
      {data !== undefined && error === null && rows.length === 0 ? <Empty>{t('statement.owingNone')}</Empty> : null}
      {rows.length === 0 ? null : (
        <table className="money-table">
          <thead>
            <tr>
              <th>{t('statement.who')}</th>
              <th>{t('statement.last')}</th>
              <th className="figure">{t('statement.invoices')}</th>
              <th className="figure">{t('statement.due')}</th>
              <th className="figure">{t('statement.owed')}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.customerId}>
                <td>
                  <a className="semi" href={hrefOf('customers', row.customerId)}>
                    {row.customer}
                  </a>
                </td>
                <td className="ink-2">
                  {row.sentAt === null ? t('statement.never') : nearText(row.sentAt, writing, now)}
                </td>
                <td className="figure">{row.invoices}</td>
                <td className="figure">{amountText(row.pastDue, writing)}</td>
                <td className="figure semi">{amountText(row.closing, writing)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

/** The last run: how far it is, what was left out, its files. It stops after the one in hand and goes on from there. */
function RunPart({ run }: { readonly run: Run }) {
  const writing = useWriting();
  const stop = useDo('statement.stop');
  const goOn = useDo('statement.goOn');
  const [wrong, setWrong] = useState<CallError | null>(null);
  const { runId, made, of, running, stopping, since, madeBefore } = run;
  const done = made - madeBefore;
  const left = since === null || done <= 0 ? null : Math.ceil(((Date.now() - since) / done) * (of - made) * 0.001);
  const openFile = async (name: string) => {
    const answer = await ask('statement.file', { runId, name });
    setWrong(answer.ok ? null : answer.error);
    if (answer.ok) savePdf(answer.output.name, answer.output.base64);
  };
  return (
    <div className="statement-run">
      <div role="status">
        <p>
          <b>{t('statement.made', { day: civilText(run.until, writing), made, of })}</b>{' '}
          {running && left !== null ? t('statement.timeLeft', { seconds: left }) : null}{' '}
          {stopping ? t('statement.stopping') : null}
        </p>
        {running ? <progress max={of} value={made} aria-label={t('statement.progress')} /> : null}
      </div>
      {run.failed === null ? null : <Notice>{t(`statement.failed-${run.failed}`)}</Notice>}
      {run.leftOut.map(({ customerId, customer, characters }) => (
        <Notice key={customerId}>{t('statement.leftOut', { name: customer, characters })}</Notice>
      ))}
      <p>
        {running ? (
          <Button small disabled={stopping} onClick={() => void stop.run({ runId })}>
            {t('statement.stop')}
          </Button>
        ) : null}
        {!running && made < of ? (
          <Button small disabled={goOn.busy} onClick={() => void goOn.run({ runId })}>
            {t('statement.goOn')}
          </Button>
        ) : null}
      </p>
      <NotSaved error={stop.error ?? goOn.error} />
      {wrong === null ? null : <Notice>{errorSentence(wrong, writing)}</Notice>}
      {run.files.length === 0 ? null : <p className="small ink-2">{t('statement.folder', { folder: run.folder })}</p>}
      <ul>
        {run.files.map((name) => (
          <li key={name}>
            <button type="button" className="link" onClick={() => void openFile(name)}>
              {t('statement.file', { name })}
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}
