import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { amountText, quantityText, type Writing } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import type { Job } from '../order.ts';

/** What a job of the book took last times, with its spread and its count; nothing where it was never done. */
export function LastTimes({ job }: { readonly job: Job }) {
  const writing = useWriting();
  const version = useAsk('jobBook.version', job.bookVersionId === null ? null : { versionId: job.bookVersionId }).data;
  const book = useAsk('jobBook.get', version === undefined ? null : { id: version.bookJobId }).data;
  if (job.bookVersionId === null || book === undefined) return null;
  const { count, hours, lines, prices, found } = book.lastTimes;
  if (count === 0) return <p className="small ink-2">{t('quote.neverDone')}</p>;
  return (
    <div className="last-times">
      <h4>{t('quote.lastTimes', { n: count })}</h4>
      <ul className="small">
        {hours === null ? null : (
          <li>
            {t('quote.lastHours', {
              range: rangeText(hours.least, hours.most, 'h', writing),
              middle: quantityText(hours.middle, 'h', writing),
              booked: quantityText(hours.booked, 'h', writing),
            })}
          </li>
        )}
        {prices === null || prices.least === null || prices.most === null ? null : (
          <li>
            {t('quote.lastPrice', {
              range:
                prices.least === prices.most
                  ? amountText(prices.least, writing)
                  : t('quote.between', {
                      least: amountText(prices.least, writing),
                      most: amountText(prices.most, writing),
                    }),
            })}
          </li>
        )}
        {lines.map((line) => (
          <li key={line.words}>
            {line.words}: {rangeText(line.least, line.most, line.unit, writing)}
            {line.count === count ? '' : t('quote.onSome', { n: line.count })}
          </li>
        ))}
        {found.map((one) => (
          <li key={one.text}>{t('quote.alsoFound', { text: one.text, n: one.count })}</li>
        ))}
      </ul>
    </div>
  );
}

function rangeText(least: number, most: number, unit: string, writing: Writing): string {
  return least === most
    ? quantityText(least, unit, writing)
    : t('quote.between', { least: quantityText(least, '', writing), most: quantityText(most, unit, writing) });
}
