import type { OutputOf } from '../../../core/contract/index.ts';
import { useWriting } from '../../state/shop.ts';
import { quantityText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';

export type StockRow = OutputOf<'stock.get'>['rows'][number];

/** Nobody has spoken for as much as is kept: short of what one wants to have. */
export const isLow = (row: StockRow): boolean => row.free < row.keepAtLeast || row.free < 0;

/**
 * What lies on the shelf, drawn: free, spoken for (hatch), on the way (dashed), a tick at keep at least. Three times the least
 * is the whole width, so that the tick stands in the same place down the list, unless more than that is there.
 */
export function StockBar({ row }: { readonly row: StockRow }) {
  const writing = useWriting();
  const free = Math.max(0, row.free);
  const spoken = Math.max(0, Math.min(row.spokenFor, row.onHand));
  const total = free + spoken + row.onTheWay;
  const whole = Math.max(total, row.keepAtLeast * 3, 1);
  const wide = (quantity: number) => `${((quantity * 100) / whole).toFixed(2)}%`;
  const text = (quantity: number) => quantityText(quantity, row.unit, writing);
  return (
    <span
      className="stock-bar"
      role="img"
      aria-label={t('stock.bar', {
        free: text(row.free),
        spoken: text(row.spokenFor),
        way: text(row.onTheWay),
        least: text(row.keepAtLeast),
      })}
    >
      {free > 0 ? <i className={isLow(row) ? 'stock-free low' : 'stock-free'} style={{ width: wide(free) }} /> : null}
      {spoken > 0 ? <i className="stock-spoken" style={{ width: wide(spoken) }} /> : null}
      {row.onTheWay > 0 ? <i className="stock-way" style={{ width: wide(row.onTheWay) }} /> : null}
      {row.keepAtLeast > 0 ? <i className="stock-least" style={{ left: wide(row.keepAtLeast) }} /> : null}
    </span>
  );
}

/** What the bars mean. */
export function StockKey() {
  return (
    <p className="stock-key" aria-hidden="true">
      <span>
        <i className="stock-free" /> {t('stock.free')}
      </span>
      <span>
        <i className="stock-spoken" /> {t('stock.spokenFor')}
      </span>
      <span>
        <i className="stock-way" /> {t('stock.onTheWay')}
      </span>
      <span>
        <i className="stock-least" /> {t('stock.keepAtLeast')}
      </span>
    </p>
  );
}
