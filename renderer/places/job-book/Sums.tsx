import type { OutputOf } from '../../../core/contract/index.ts';
import type { MoneySettings } from '../../../core/money/shop-rules.ts';
import { useWriting } from '../../state/shop.ts';
import { amountText, readAmount } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { reckonJob, type StockParts } from './totals.ts';
import { JobCell, useJob } from './writing-job.tsx';

interface Props {
  readonly parts: StockParts;
  readonly settings: MoneySettings;
  readonly rates: OutputOf<'shop.get'>['rates'];
}

/** What the job comes to: its fixed price, else its lines at each rate. */
export function Sums({ parts, settings, rates }: Props) {
  const { content, change } = useJob();
  const writing = useWriting();
  const text = (sum: number) => amountText(sum, writing);
  const usual = rates.find((rate) => rate.usual) ?? rates[0];
  const whole = reckonJob(content, usual?.price ?? 0, parts, settings);
  const fixed = content.fixedPrice !== null;
  const byLines = reckonJob({ ...content, fixedPrice: null }, usual?.price ?? 0, parts, settings);
  return (
    <dl className="book-sums">
      {change === null && !fixed ? null : (
        <div className="book-fixed">
          <dt>{t('jobBook.fixedPrice')}</dt>
          <dd>
            <JobCell
              label={t('jobBook.fixedPrice')}
              figure
              value={content.fixedPrice === null ? '' : text(content.fixedPrice)}
              placeholder={t('jobBook.fixedNone')}
              read={(typed, now) => {
                const fixedPrice = typed.trim() === '' ? null : readAmount(typed, writing);
                if (typed.trim() !== '' && (fixedPrice === null || fixedPrice < 0)) return null;
                return { ...now, fixedPrice };
              }}
              wrong={t('jobBook.fixedWrong')}
            />
          </dd>
        </div>
      )}
      <div className="sum">
        <dt>{t('jobBook.theJob')}</dt>
        <dd>{text(whole.net)}</dd>
      </div>
      <div>
        <dt>{t('jobBook.withTax')}</dt>
        <dd>{text(whole.gross)}</dd>
      </div>
      {fixed ? (
        <div>
          <dt>{t('jobBook.byLines')}</dt>
          <dd>
            {text(byLines.net)}, {t('jobBook.withTax')} {text(byLines.gross)}
          </dd>
        </div>
      ) : null}
      {rates
        .filter((rate) => rate.id !== usual?.id)
        .map((rate) => {
          const other = reckonJob({ ...content, fixedPrice: null }, rate.price, parts, settings);
          return (
            <div key={rate.id}>
              <dt>
                {t(fixed ? 'jobBook.linesAtRate' : 'jobBook.atRate', { name: rate.name, price: text(rate.price) })}
              </dt>
              <dd>
                {text(other.net)}, {t('jobBook.withTax')} {text(other.gross)}
              </dd>
            </div>
          );
        })}
    </dl>
  );
}
