import { useState } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { comboOf } from '../../frame/keys.ts';
import { hrefOf } from '../../frame/router.ts';
import { Plate } from '../../parts/Plate.tsx';
import { LateMark, SoonMark } from '../../parts/WordMark.tsx';
import { useWriting } from '../../state/shop.ts';
import { figureWords } from '../../words/error-sentence.ts';
import { amountText } from '../../words/figures.ts';
import { t, tMaybe } from '../../words/t.ts';
import { timeText } from '../../words/times.ts';
import { OrderPeek } from './OrderPeek.tsx';

export type OrderRowOf = OutputOf<'order.page'>['rows'][number];

/** One order in the list; Space opens it in place. */
export function OrderRow({ row }: { readonly row: OrderRowOf }) {
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
            if (comboOf(event) !== 'Space') return;
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
          <span className="order-what">{row.titles.length === 0 ? `“${row.complaint}”` : row.titles.join(', ')}</span>
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
