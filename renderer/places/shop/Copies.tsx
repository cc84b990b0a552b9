import { useState } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { Button } from '../../parts/Button.tsx';
import { Empty } from '../../parts/Empty.tsx';
import { Loading } from '../../parts/Loading.tsx';
import { ask } from '../../state/call.ts';
import { useNow } from '../../state/now.ts';
import { useWriting } from '../../state/shop.ts';
import type { CallAnswer } from '../../state/transport.ts';
import { useAsk } from '../../state/use-ask.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { spanText, wholeText } from '../../words/figures.ts';
import { t, tMaybe } from '../../words/t.ts';
import { nearText, timeText } from '../../words/times.ts';
import { MakeCopy } from './MakeCopy.tsx';

/** The last copy, what would be lost, the check of everything, and the newest rows of the trail. */
export function Copies() {
  const now = useNow(60_000);
  const writing = useWriting();
  const { data, error, loading } = useAsk('care.copies', {});
  const last = data?.copies[0];
  return (
    <>
      <section>
        {loading ? <Loading rows={2} /> : null}
        {error === null ? null : <p role="alert">{errorSentence(error, writing)}</p>}
        {data === undefined ? null : last === undefined ? (
          <p>
            <b className="in-heed">{t('shop.noCopy')}</b> {t('shop.noCopyWords')}
          </p>
        ) : (
          <p>
            <b>{t('shop.lastCopy', { when: nearText(last.at, writing, now) })}</b>{' '}
            {t('shop.wouldBeGone', { span: spanText(now - last.at) })}
          </p>
        )}
        <p className="small ink-2">{t('shop.sameDisk')}</p>
        <MakeCopy />
        <ul className="shop-rows">
          {(data?.copies ?? []).slice(0, 8).map((copy) => (
            <li key={copy.name}>
              <span>{nearText(copy.at, writing, now)}</span>
              <b>{copy.name}</b>
              <span className="figure">
                {t('shop.kilobytes', { n: wholeText(Math.ceil(copy.bytes / 1000), writing) })}
              </span>
            </li>
          ))}
        </ul>
        <p>
          {t('shop.bringBack')} <code>npm run shop -- restore</code>
        </p>
      </section>
      <Verify />
      <Trail />
    </>
  );
}

/** What the check counts, by name. */
const COUNTED = ['trail', 'paper', 'part_move', 'payment', 'posting'] as const;

type Found = CallAnswer<OutputOf<'care.verify'>>;

/** Adds everything up again: the trail, papers, stock, books. */
function Verify() {
  const writing = useWriting();
  const [began, setBegan] = useState<number | null>(null);
  const [found, setFound] = useState<{ readonly answer: Found; readonly at: number } | null>(null);
  const go = async () => {
    setBegan(Date.now());
    const answer = await ask('care.verify', {});
    setFound({ answer, at: Date.now() });
    setBegan(null);
  };
  return (
    <section aria-label={t('shop.verify')}>
      <h3>{t('shop.verify')}</h3>
      <p className="small ink-2">{t('shop.verifyWords')}</p>
      <p className="shop-verify">
        <Button onClick={() => void go()} disabled={began !== null}>
          {t('shop.verifyNow')}
        </Button>
        {began === null ? null : <Running since={began} />}
      </p>
      <div role="status">
        {found === null || began !== null ? null : found.answer.ok ? (
          <Result found={found.answer.output} at={found.at} />
        ) : (
          <p className="wrong-words">{errorSentence(found.answer.error, writing)}</p>
        )}
      </div>
    </section>
  );
}

function Running({ since }: { readonly since: number }) {
  const now = useNow(1000);
  return <span>{t('shop.running', { n: Math.max(0, Math.round((now - since) / 1000)) })}</span>;
}

function Result({ found, at }: { readonly found: OutputOf<'care.verify'>; readonly at: number }) {
  const writing = useWriting();
  const checked = COUNTED.map((what) => [what, found.checked[what] ?? 0] as const);
  const all = Object.values(found.checked).reduce((sum, n) => sum + n, 0);
  return (
    <>
      {found.sound ? (
        <p>
          <b>{t('shop.sound', { time: timeText(at, writing) })}</b>
        </p>
      ) : (
        <>
          <p className="in-stop semi">{t('shop.faults', { n: found.faults.length })}</p>
          <ul className="shop-rows faults">
            {found.faults.map((fault) => (
              <li key={`${fault.what} ${fault.table} ${fault.row}`}>
                <b className="in-stop">{tMaybe(`shop.fault-${fault.what}`) ?? fault.what}</b>
                <span>
                  {fault.table} {fault.row}
                </span>
                <span>{fault.detail}</span>
              </li>
            ))}
          </ul>
        </>
      )}
      <dl className="shop-checked">
        {checked.map(([what, n]) => (
          <div key={what}>
            <dt>{t(`shop.checked-${what}`)}</dt>
            <dd>{wholeText(n, writing)}</dd>
          </div>
        ))}
        <div>
          <dt>{t('shop.checked-all')}</dt>
          <dd>{wholeText(all, writing)}</dd>
        </div>
      </dl>
    </>
  );
}

/** What was done, newest first. */
function Trail() {
  const writing = useWriting();
  const now = useNow(60_000);
  const [before, setBefore] = useState<number | null>(null);
  const { data, error } = useAsk('trail.list', { before, most: 20 });
  const rows = data?.rows ?? [];
  const oldest = rows.at(-1)?.n;
  return (
    <section aria-label={t('shop.trail')}>
      <h3>{t('shop.trail')}</h3>
      <p className="small ink-2">{t('shop.trailWords')}</p>
      {error === null ? null : <p role="alert">{errorSentence(error, writing)}</p>}
      {data !== undefined && rows.length === 0 ? <Empty>{t('shop.trailNone')}</Empty> : null}
      <ul className="shop-rows trail">
        {rows.map((row) => (
          <li key={row.n}>
            <span className="figure ink-2">{row.n}</span>
            <span>{nearText(row.at, writing, now)}</span>
            <b>{row.person}</b>
            <span>{tMaybe(`shop.did-${row.operation}`) ?? row.operation}</span>
            <span className="ink-2">{whatChanged(row.changes)}</span>
          </li>
        ))}
      </ul>
      <p className="shop-verify">
        {before === null ? null : <Button onClick={() => setBefore(null)}>{t('shop.newest')}</Button>}
        {oldest === undefined || oldest <= 1 ? null : (
          <Button onClick={() => setBefore(oldest)}>{t('shop.older')}</Button>
        )}
      </p>
    </section>
  );
}

const said = (table: string) => table.replaceAll('_', ' ');

/** The tables that a trail row's changes touch, each with how many of its rows. */
function whatChanged(changes: string): string {
  try {
    const rows = JSON.parse(changes) as readonly { readonly t: string }[];
    const byTable = Map.groupBy(
      rows.filter((row) => row.t !== 'request' && row.t !== 'number_series'),
      (row) => row.t,
    );
    return [...byTable]
      .map(([table, all]) => (all.length === 1 ? said(table) : `${said(table)} ${all.length}`))
      .join(', ');
  } catch {
    return '';
  }
}
