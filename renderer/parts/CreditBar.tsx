import { useWriting } from '../state/shop.ts';
import { amountText } from '../words/figures.ts';
import { t } from '../words/t.ts';
import './credit-bar.css';

interface Props {
  /** Minor units, tax in. */
  readonly owed: number;
  readonly saidYes: number;
  readonly asked: number;
  readonly limit: number;
}

const PERCENT = 100;

/** An account against its limit: owed in ink, said yes to in stamp blue, asked now hatched, the limit a black mark, what is over it in oxide hatch. */
export function CreditBar({ owed, saidYes, asked, limit }: Props) {
  const writing = useWriting();
  const all = owed + saidYes + asked;
  const over = Math.max(0, all - limit);
  const whole = Math.max(all, limit, 1);
  const at = (sum: number) => `${(sum * PERCENT) / whole}%`;
  const parts = [
    { name: 'owed', from: 0, sum: owed },
    { name: 'said', from: owed, sum: saidYes },
    { name: 'asked', from: owed + saidYes, sum: asked },
  ] as const;
  const shown = parts.filter((part) => part.sum > 0);
  return (
    <figure className="credit">
      <div className="credit-limit" style={{ paddingLeft: at(limit) }}>
        <b className={limit * 2 > whole ? 'before' : 'after'}>
          {t('customers.limit', { sum: amountText(limit, writing) })}
        </b>
      </div>
      <div className="credit-bar" aria-hidden="true">
        {shown.map((part) => (
          <i key={part.name} className={part.name} style={{ left: at(part.from), width: at(part.sum) }} />
        ))}
        {over === 0 ? null : <i className="over" style={{ left: at(limit), width: at(over) }} />}
        <i className="limit-mark" style={{ left: at(limit) }} />
      </div>
      <figcaption>
        {shown.map((part) => (
          <span key={part.name}>
            <i className={`credit-key ${part.name}`} aria-hidden="true" /> {t(`customers.credit-${part.name}`)}{' '}
            <b className="figure">{amountText(part.sum, writing)}</b>
          </span>
        ))}
        {over === 0 ? (
          <span>{t('customers.creditRoom', { sum: amountText(limit - all, writing) })}</span>
        ) : (
          <b className="in-stop">
            <i className="credit-key over" aria-hidden="true" />{' '}
            {t('customers.creditOver', { sum: amountText(over, writing) })}
          </b>
        )}
      </figcaption>
    </figure>
  );
}
