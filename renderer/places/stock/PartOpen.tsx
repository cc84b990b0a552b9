import { scale } from '../../../core/money/money.ts';
import { useKey } from '../../frame/keys.ts';
import { goTo, hrefOf } from '../../frame/router.ts';
import { Button } from '../../parts/Button.tsx';
import { Empty } from '../../parts/Empty.tsx';
import { useNow } from '../../state/now.ts';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { amountText, quantityText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { nearText } from '../../words/times.ts';
import { Fact, PartCell } from './PartCell.tsx';
import type { StockRow } from './StockBar.tsx';

/** One part opened: what it is and costs, and what went in and out. */
export function PartOpen({ row, mayChange }: { readonly row: StockRow; readonly mayChange: boolean }) {
  const writing = useWriting();
  useKey('Esc', () => goTo('stock'));
  const text = (quantity: number) => quantityText(quantity, row.unit, writing);
  const worth =
    row.value === null || row.onHand <= 0
      ? null
      : t('stock.worth', {
          sum: amountText(row.value, writing),
          each: amountText(scale(row.value, 1000, row.onHand), writing),
        });
  return (
    <section aria-label={row.words}>
      <h2>
        {row.words}
        <a href={hrefOf('stock')}>{t('stock.close')}</a>
      </h2>
      <dl className="side-facts">
        <PartCell row={row} name="words" mayChange={mayChange} />
        <PartCell row={row} name="number" mayChange={mayChange} />
        <PartCell row={row} name="bin" mayChange={mayChange} />
        {row.price === null ? null : <PartCell row={row} name="price" mayChange={mayChange} />}
        <PartCell row={row} name="keepAtLeast" mayChange={mayChange} />
        <PartCell row={row} name="keepAtMost" mayChange={mayChange} />
        <PartCell row={row} name="pack" mayChange={mayChange} />
        <Fact name={t('stock.onHand')}>
          <b>{text(row.onHand)}</b> {worth === null ? null : <span className="small ink-2">{worth}</span>}
        </Fact>
        <Fact name={t('stock.spokenFor')}>{text(row.spokenFor)}</Fact>
        <Fact name={t('stock.free')}>{text(row.free)}</Fact>
      </dl>
      {mayChange ? <Button onClick={() => goTo('stock', 'delivery', row.id)}>{t('stock.delivery')}</Button> : null}
      <Moves row={row} />
    </section>
  );
}

function Moves({ row }: { readonly row: StockRow }) {
  const writing = useWriting();
  const now = useNow(60_000);
  const moves = useAsk('part.moves', { partId: row.id }).data?.rows;
  return (
    <>
      <h3>{t('stock.moves')}</h3>
      {moves?.length === 0 ? <Empty>{t('stock.movesNone')}</Empty> : null}
      <ul className="side-rows moves">
        {(moves ?? []).map((move) => (
          <li key={move.id}>
            <span>
              {t(`stock.${move.what}`)}{' '}
              {move.order === null ? null : (
                <a href={hrefOf('orders', move.order.id)}>{t('stock.movedOn', { number: move.order.number })}</a>
              )}
            </span>
            <span className="figure semi">
              {move.quantity > 0 ? '+' : '\u2212'}
              {quantityText(Math.abs(move.quantity), row.unit, writing)}
            </span>
            <span className="small ink-2">
              {nearText(move.at, writing, now)}, {move.person}
              {move.note === '' ? null : `, ${move.note}`}
            </span>
            <span className="figure small">{amountText(move.value, writing)}</span>
          </li>
        ))}
      </ul>
    </>
  );
}
