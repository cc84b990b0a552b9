import { useState } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { hrefOf } from '../../frame/router.ts';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { Empty } from '../../parts/Empty.tsx';
import { Field } from '../../parts/Field.tsx';
import { Loading } from '../../parts/Loading.tsx';
import { Notice, NotSaved } from '../../parts/Notice.tsx';
import { useNow } from '../../state/now.ts';
import { useWriting } from '../../state/shop.ts';
import { useAsk, useAskAsTyped } from '../../state/use-ask.ts';
import { useDo } from '../../state/use-do.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { amountText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { civilText, nearText } from '../../words/times.ts';
import { StatementRun } from './StatementRun.tsx';
import './statement.css';

type Owing = OutputOf<'statement.owing'>;
const FILES = ['each', 'joined'] as const;

/** Who owes on a day, and a statement for each of them. */
export function Statements() {
  const writing = useWriting();
  const [day, setDay] = useState<string | null>(null);
  const [files, setFiles] = useState<(typeof FILES)[number]>('each');
  const until = day === null || day === '' ? null : day;
  const { data, error, loading } = useAskAsTyped('statement.owing', { until });
  const last = useAsk('statement.run', {});
  const start = useDo('statement.start');
  const run = last.data?.run ?? null;
  const rows = error === null ? (data?.rows ?? []) : [];
  const running = run?.running === true;
  return (
    <section aria-label={t('statement.owing')}>
      <div className="statement-days">
        <Field
          label={t('statement.until')}
          type="date"
          past
          value={day ?? data?.until ?? ''}
          onChange={setDay}
          error={error?.code === 'bad-input' ? errorSentence(error, writing) : null}
        />
        {rows.length === 0 ? null : (
          <>
            <Choice
              label={t('statement.files')}
              joined
              value={files}
              options={FILES.map((value) => ({ value, words: t(`statement.files-${value}`) }))}
              onChange={setFiles}
            />
            <Button
              kind="go"
              held={running ? t('statement.runsNow') : null}
              disabled={start.busy}
              onClick={() => void start.run({ until, joined: files === 'joined' })}
            >
              {t('statement.start', { n: rows.length })}
            </Button>
          </>
        )}
      </div>
      {error === null || error.code === 'bad-input' ? null : <Notice>{errorSentence(error, writing)}</Notice>}
      {last.error === null ? null : <Notice>{errorSentence(last.error, writing)}</Notice>}
      <NotSaved error={start.error} onAgain={() => void start.again()} />
      {run === null ? null : <StatementRun key={run.runId} run={run} />}
      {loading ? <Loading rows={6} /> : null}
      {data !== undefined && error === null && rows.length === 0 ? (
        <Empty>{t('statement.owingNone', { day: civilText(data.until, writing) })}</Empty>
      ) : null}
      {data === undefined || rows.length === 0 ? null : <OwingTable owing={data} />}
    </section>
  );
}

function OwingTable({ owing }: { readonly owing: Owing }) {
  const writing = useWriting();
  const now = useNow(60_000);
  return (
    <>
      <h2 className="money-head">
        {t('statement.owing')} <small>{civilText(owing.until, writing)}</small>
        <span className="figure">{amountText(owing.closing, writing)}</span>
      </h2>
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
          {owing.rows.map((row) => (
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
    </>
  );
}
