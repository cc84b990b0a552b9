import { useNow } from '../../state/now.ts';
import { useWriting } from '../../state/shop.ts';
import { amountText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { nearText } from '../../words/times.ts';
import type { Order } from '../order.ts';
import { MovedLines, moreText } from '../yes/MovedLines.tsx';
import { movedFrom, type Quote } from '../yes/moved.ts';

/** What moved on the sheet since the last version of its quote. */
export function SinceQuote({ order, quote }: { readonly order: Order; readonly quote: Quote | null }) {
  const writing = useWriting();
  const now = useNow(60_000);
  if (quote === null) return null;
  const jobs = order.jobs.filter(
    (job) => job.amount !== null && !job.offered && job.answer !== 'no' && job.answer !== 'later',
  );
  const moved = jobs.map((job) => movedFrom(job, quote, null)).filter((one) => one.isNew || one.moved.length > 0);
  const gone = quote.jobs.filter((was) => !jobs.some((job) => job.id === was.jobId));
  const gross = order.yes.onSheet ?? 0;
  return (
    <section className="since-quote">
      <h3>
        {t('quote.since', { version: quote.version })}{' '}
        <span>
          {nearText(quote.issuedAt, writing, now)}, {amountText(quote.gross, writing)}
        </span>
      </h3>
      {moved.length === 0 && gone.length === 0 && gross === quote.gross ? <p>{t('quote.unmoved')}</p> : null}
      {moved.map((one) => (
        <MovedLines key={one.job.id} moved={one} aside={false} level="h4" />
      ))}
      {gone.map((was) => (
        <p className="yes-line same" key={was.jobId}>
          <s>{was.lines.map((line) => line.words).join(', ')}</s>
          <s className="figure yes-was">{amountText(was.amount, writing)}</s>
          <span className="figure">{t('decision.gone')}</span>
          <b className="figure">{moreText(-was.amount, writing)}</b>
        </p>
      ))}
      {gross === quote.gross ? null : (
        <p className="yes-line total">
          <b>{t('parts.onTheSheet')}</b>
          <span className="figure yes-was">{amountText(quote.gross, writing)}</span>
          <b className="figure">{amountText(gross, writing)}</b>
          <span className="figure">{moreText(gross - quote.gross, writing)}</span>
        </p>
      )}
    </section>
  );
}
