import { hrefOf } from '../../frame/router.ts';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { amountText, quantityText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { civilText } from '../../words/times.ts';

/** What lies in stock and has not moved for long, oldest first; nothing at all while there is none. */
export function Still() {
  const writing = useWriting();
  const still = useAsk('stock.still', {}).data;
  if (still === undefined || still.rows.length === 0) return null;
  const since = civilText(still.since, writing);
  return (
    <section aria-label={t('stock.still')}>
      <h2>
        {t('stock.still')} <span>{still.rows.length}</span>
      </h2>
      <p className="small ink-2">
        {t('stock.stillSince', { since })}{' '}
        {still.worth === null ? null : t('stock.stillWorth', { sum: amountText(still.worth, writing) })}
      </p>
      <ul className="side-rows">
        {still.rows.map((row) => (
          <li key={row.id}>
            <a href={hrefOf('stock', row.id)}>{row.words}</a>
            <span className="figure">{quantityText(row.onHand, row.unit, writing)}</span>
            <span className="small ink-2">
              {row.movedOn === null ? row.number : t('stock.stillMoved', { day: civilText(row.movedOn, writing) })}
            </span>
            <span className="figure small">{row.value === null ? null : amountText(row.value, writing)}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
