import { hrefOf } from '../../frame/router.ts';
import { WordMark } from '../../parts/WordMark.tsx';
import { useWriting } from '../../state/shop.ts';
import { amountText, quantityText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { isLow, StockBar, type StockRow } from './StockBar.tsx';

/** The wall, drawer or rack of a bin: what stands before its figures. */
export const wallOf = (bin: string): string => bin.replace(/[\s\d.-]*$/, '').trim();

/** Parts by wall, each with its bar. */
export function StockList({ rows, openId }: { readonly rows: readonly StockRow[]; readonly openId: string | null }) {
  const walls = Map.groupBy(rows, (row) => wallOf(row.bin));
  const named = [...walls].sort(([a], [b]) => (a === '' ? 1 : b === '' ? -1 : a.localeCompare(b)));
  return (
    <>
      {named.map(([wall, parts], at) => (
        <section key={wall} className="stock-wall" aria-label={wallName(wall)}>
          <h2 className="stock-row stock-head">
            <span className="stock-wall-name">{wallName(wall)}</span>
            {at === 0 ? (
              <>
                <span>{t('stock.onTheShelf')}</span>
                <span className="figure">{t('stock.free')}</span>
                <span />
                <span className="figure">{t('stock.each')}</span>
              </>
            ) : null}
          </h2>
          <ul>
            {parts.map((row) => (
              <li key={row.id}>
                <Part row={row} open={row.id === openId} />
              </li>
            ))}
          </ul>
        </section>
      ))}
    </>
  );
}

const wallName = (wall: string) => (wall === '' ? t('stock.noBin') : t('stock.binsOf', { name: wall }));

function Part({ row, open }: { readonly row: StockRow; readonly open: boolean }) {
  const writing = useWriting();
  return (
    <a
      className="stock-row"
      href={open ? hrefOf('stock') : hrefOf('stock', row.id)}
      aria-current={open ? 'true' : undefined}
    >
      <b>{row.bin}</b>
      <span>
        {row.words} {row.oneTime ? <span className="one-time">{t('stock.oneTime')}</span> : null}
      </span>
      <span className="ink-2">{row.number}</span>
      <StockBar row={row} />
      <span className="figure semi">{quantityText(row.free, row.unit, writing)}</span>
      <span>{isLow(row) ? <WordMark kind="heed">{t('stock.low')}</WordMark> : null}</span>
      <span className="figure">{amountText(row.price, writing)}</span>
    </a>
  );
}
