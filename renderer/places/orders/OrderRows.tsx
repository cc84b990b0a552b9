import { useState } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { hrefOf } from '../../frame/router.ts';
import { Button } from '../../parts/Button.tsx';
import { Empty } from '../../parts/Empty.tsx';
import { Loading } from '../../parts/Loading.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { Plate } from '../../parts/Plate.tsx';
import { LateMark, SoonMark } from '../../parts/WordMark.tsx';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { figureWords } from '../../words/error-sentence.ts';
import { amountText } from '../../words/figures.ts';
import { t, tMaybe } from '../../words/t.ts';
import { timeText, weekdayText } from '../../words/times.ts';
import { byDay } from './by-day.ts';
import { OrderPeek } from './OrderPeek.tsx';

type Row = OutputOf<'order.list'>['rows'][number];

interface Props {
  readonly which: 'open' | 'unpaid' | 'all';
  readonly text: string;
  /** Only orders from before this instant. */
  readonly before: number | null;
  readonly first: boolean;
  readonly last: boolean;
  readonly onOlder: (before: number) => void;
}

const PIECE = 60;

/** A piece of the list, parted by day; the last piece leads on to older ones. */
export function OrderRows({ which, text, before, first, last, onOlder }: Props) {
  const writing = useWriting();
  const { data, error, loading } = useAsk('order.list', { which, text, before, most: PIECE });
  const rows = data?.rows ?? [];
  const end = rows.at(-1);
  return (
    <>
      {data === undefined ? <NotSaved error={error} /> : null}
      {loading ? <Loading rows={8} /> : null}
      {data !== undefined && rows.length === 0 && first ? (
        <Empty>{t(text === '' ? `orders.none-${which}` : 'orders.noneHold', { text })}</Empty>
      ) : null}
      {byDay(rows, writing.zone).map(({ day, rows: ofDay }) => (
        <section key={day} className="orders-day" aria-label={dayWords(day, writing)}>
          <header>
            <h2>{dayWords(day, writing)}</h2>
            <p>{t('orders.count', { n: ofDay.length })}</p>
          </header>
          <ul>
            {ofDay.map((row) => (
              <OrderRow key={row.id} row={row} />
            ))}
          </ul>
        </section>
      ))}
      {last && end !== undefined && rows.length === PIECE ? (
        <p className="orders-older">
          <Button onClick={() => onOlder(end.openedAt)}>{t('orders.older')}</Button>
        </p>
      ) : null}
    </>
  );
}

function dayWords(day: string, writing: ReturnType<typeof useWriting>): string {
  const words = weekdayText(Date.parse(`${day}T12:00Z`), { ...writing, zone: 'UTC' });
  return day.startsWith(String(new Date().getUTCFullYear())) ? words : `${words} ${day.slice(0, 4)}`;
}

function OrderRow({ row }: { readonly row: Row }) {
  const writing = useWriting();
  const [peeking, peek] = useState(false);
  const { next } = row;
  return (
    <li>
      <div className="order-line">
        <a
          className="order-row"
          href={hrefOf('orders', row.id)}
          data-at={row.openedAt}
          onKeyDown={(event) => {
            if (event.key !== ' ') return;
            event.preventDefault();
            peek(!peeking);
          }}
        >
          <b className="semi">{row.number}</b>
          <span className="ink-2">{timeText(row.openedAt, writing)}</span>
          <span>{row.plate === '' ? null : <Plate plate={row.plate} />}</span>
          <span className="order-who">
            <b className="semi">{row.customer}</b> <span className="ink-2">{row.car}</span>
          </span>
          <span className="order-what">{row.titles.join(', ')}</span>
          <span className="figure">{amountText(row.gross, writing)}</span>
          <span className={next.promise === 'late' ? 'in-stop semi' : ''}>
            {next.promise === 'late' ? <LateMark /> : null}
            {next.promise === 'soon' ? <SoonMark /> : null}{' '}
            {next.whose === 'nobody' ? null : <span className="order-open" aria-hidden="true" />}
            {tMaybe(`next.${next.what}`, figureWords(next.with, writing)) ?? next.what}
          </span>
        </a>
        <button
          type="button"
          className="link small order-peek-key"
          aria-expanded={peeking}
          aria-label={t(peeking ? 'orders.foldOrder' : 'orders.peekInto', { number: row.number })}
          onClick={() => peek(!peeking)}
        >
          {t(peeking ? 'orders.fold' : 'orders.peek')}
        </button>
      </div>
      {peeking ? <OrderPeek id={row.id} /> : null}
    </li>
  );
}
