import { useRef } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Notice, NotSaved } from '../../parts/Notice.tsx';
import { t } from '../../words/t.ts';
import { BadRows } from './BadRows.tsx';
import { Columns } from './Columns.tsx';
import { Earlier } from './Earlier.tsx';
import { Progress } from './Progress.tsx';
import { SumsWritten } from './SumsWritten.tsx';
import { TakeOut } from './TakeOut.tsx';
import { useBringIn } from './use-bring-in.ts';
import './bring-in.css';

/** In from elsewhere: a file is chosen, its columns are told, it is tried, brought in, and can be taken back. */
export default function BringIn() {
  const input = useRef<HTMLInputElement>(null);
  const all = useBringIn();
  const { file, mapping, tried, brought, back, work, unreadable } = all;
  const holds = mapping.columns.some((field) => field?.startsWith('customer') || field?.startsWith('car'));
  const fresh = tried?.fresh.size ?? 0;
  return (
    <div className="bring-in">
      <p>{t('bringIn.what')}</p>
      <input
        ref={input}
        type="file"
        accept=".csv,.txt,.tsv,text/csv,text/plain"
        className="aloud"
        tabIndex={-1}
        aria-hidden="true"
        onChange={(event) => {
          const chosen = event.target.files?.[0];
          event.target.value = '';
          if (chosen !== undefined) void all.choose(chosen);
        }}
      />
      <div>
        <Button kind={file === null ? 'go' : 'plain'} disabled={work !== null} onClick={() => input.current?.click()}>
          {t(file === null ? 'bringIn.choose' : 'bringIn.another')}
        </Button>
      </div>
      {unreadable === null ? null : <Notice>{unreadableWords(unreadable)}</Notice>}
      {file === null ? null : (
        <>
          <p>
            {t('bringIn.file', {
              ...{ name: file.name, rows: file.table.rows.length, encoding: file.table.encoding },
              mark: t(`bringIn.mark-${file.table.delimiter}`),
            })}
          </p>
          <Columns table={file.table} mapping={mapping} onChange={all.map} />
          {all.sums.length === 0 ? null : (
            <SumsWritten
              sums={all.sums}
              digits={all.digits}
              mapping={mapping}
              unclear={all.unclear}
              onChange={all.map}
            />
          )}
        </>
      )}
      {work === null ? null : <Progress work={work} onStop={work.what === 'takingBack' ? null : all.stop} />}
      <NotSaved error={all.error} />
      {file === null || work !== null || tried !== null || brought !== null ? null : (
        <div>
          <Button
            kind="go"
            held={
              !holds
                ? t('bringIn.nothingHeld')
                : all.unclear !== null
                  ? t('bringIn.sumsHeld', { sum: all.unclear })
                  : undefined
            }
            onClick={() => void all.tryIt()}
          >
            {t('bringIn.try')}
          </Button>
        </div>
      )}
      {tried === null || file === null ? null : (
        <section className="bring-found">
          {brought === null ? (
            <p role="status">
              <b className="semi">{fresh === 0 ? t('bringIn.nothingNew') : t('bringIn.would', figures(tried))}</b>{' '}
              {tried.known === 0 ? null : t('bringIn.known', { n: tried.known })}
            </p>
          ) : work !== null ? null : (
            <p role="status">
              {brought.whole ? null : (
                <b className="semi">{t('bringIn.stopped', { done: brought.rows, total: fresh })} </b>
              )}
              <b className="semi">{t('bringIn.cameIn', figures(brought.made))}</b>
            </p>
          )}
          {work !== null ? null : (
            <div className="bring-acts">
              {fresh === 0 || brought?.whole ? null : (
                <Button kind="go" onClick={() => void all.bring()}>
                  {brought === null ? t('bringIn.go', { n: fresh }) : t('bringIn.goOn')}
                </Button>
              )}
              {brought === null ? null : (
                <Button onClick={() => void all.takeBack(brought.id)}>{t('bringIn.takeBack')}</Button>
              )}
            </div>
          )}
          <BadRows table={file.table} mapping={mapping} bad={tried.bad} />
        </section>
      )}
      {back === null ? null : (
        <p role="status">
          <b className="semi">{t('bringIn.tookBack', { n: back.gone })}</b>{' '}
          {back.kept === 0 ? null : t('bringIn.kept', { n: back.kept })}
        </p>
      )}
      <Earlier busy={work !== null} onTakeBack={(id) => void all.takeBack(id)} />
      <TakeOut />
    </div>
  );
}

const figures = ({
  customers,
  cars,
  visits,
}: {
  readonly customers: number;
  readonly cars: number;
  readonly visits: number;
}) => ({
  customers,
  cars,
  visits,
});

function unreadableWords(problem: NonNullable<ReturnType<typeof useBringIn>['unreadable']>): string {
  if (problem.problem === 'quote-open') return t('bringIn.quoteOpen', { line: problem.line });
  return t(problem.problem === 'empty' ? 'bringIn.empty' : 'bringIn.tooLarge');
}
