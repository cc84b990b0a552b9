import { useWriting } from '../../state/shop.ts';
import { amountText, quantityText } from '../../words/figures.ts';
import { listWords } from '../../words/list.ts';
import { t } from '../../words/t.ts';
import type { BookJob } from './draft.ts';

type Last = BookJob['lastTimes'];

/** What the job took last times: hours drawn on a scale with the book's own as a heavy mark, with spread and count. */
export function LastTimes({ last, bookHours }: { readonly last: Last; readonly bookHours: number }) {
  const writing = useWriting();
  if (last.count === 0) return <p className="small ink-2">{t('jobBook.neverDone')}</p>;
  const hours = (of: number) => quantityText(of, '', writing);
  return (
    <section className="book-last" aria-label={t('jobBook.lastTimes', { n: last.count, hours: hours(bookHours) })}>
      <p className="h4">{t('jobBook.lastTimes', { n: last.count, hours: hours(bookHours) })}</p>
      {last.hours === null ? (
        <p className="small ink-2">{t('jobBook.clockedNone')}</p>
      ) : (
        <HoursScale hours={last.hours} bookHours={bookHours} />
      )}
      {last.lines.length === 0 ? null : (
        <p className="small">
          <b>{t('jobBook.really')}</b>{' '}
          {last.lines
            .map(({ words, unit, least, most, count }) => {
              const figures = { words, n: count, least: quantityText(least, unit, writing) };
              return least === most && count > 1
                ? t('jobBook.usedSame', figures)
                : t('jobBook.used', { ...figures, most: quantityText(most, unit, writing) });
            })
            .join('; ')}
        </p>
      )}
      {last.found.length === 0 ? null : (
        <p className="small">
          <b>{t('jobBook.alsoFound')}</b>{' '}
          {listWords(last.found.map(({ text, count }) => t('jobBook.foundTimes', { text, n: count })))}
        </p>
      )}
      {last.prices === null || last.prices.least === null ? null : (
        <p className="small">
          {t('jobBook.prices', {
            least: amountText(last.prices.least, writing),
            most: amountText(last.prices.most, writing),
          })}
        </p>
      )}
    </section>
  );
}

function HoursScale({ hours, bookHours }: { readonly hours: NonNullable<Last['hours']>; readonly bookHours: number }) {
  const writing = useWriting();
  const figures = [...new Set([hours.least, hours.middle, hours.most])];
  const from = Math.max(0, Math.floor((Math.min(bookHours, hours.least) - 300) / 1000));
  const to = Math.max(from + 1, Math.ceil((Math.max(bookHours, hours.most) + 300) / 1000));
  const left = (of: number) => `${(((of / 1000 - from) * 100) / (to - from)).toFixed(2)}%`;
  const text = (of: number) => quantityText(of, '', writing);
  const step = Math.ceil((to - from) / 6);
  const marks = Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, i) => from + i * step);
  const said =
    figures.length === 1
      ? t('jobBook.clockedOne', { least: text(hours.least) })
      : t('jobBook.clocked', { least: text(hours.least), most: text(hours.most), middle: text(hours.middle) });
  return (
    <div className="book-scale" role="img" aria-label={said}>
      {figures.map((figure) => (
        <span key={figure} className="book-dot" style={{ left: left(figure) }}>
          {text(figure)}
        </span>
      ))}
      <i style={{ left: left(bookHours) }} />
      <div>
        {marks.map((mark) => (
          <span key={mark} style={{ left: left(mark * 1000) }}>
            {mark === marks.at(-1) ? t('parts.hours', { n: mark }) : mark}
          </span>
        ))}
      </div>
    </div>
  );
}
