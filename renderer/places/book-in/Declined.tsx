import type { OutputOf } from '../../../core/contract/index.ts';
import { useWriting } from '../../state/shop.ts';
import { amountText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { civilText } from '../../words/times.ts';

interface Props {
  readonly works: OutputOf<'car.get'>['declined'];
}

/** What was said no to before: worth asking again, with its price then and its day. */
export function Declined({ works }: Props) {
  const writing = useWriting();
  if (works.length === 0) return null;
  return (
    <div>
      <h3 className="h4">{t('intake.declined')}</h3>
      <ul className="intake-declined">
        {works.map((work) => (
          <li key={work.decisionId + work.jobId}>
            <span>
              {work.unsafe ? <b className="in-stop">{t('intake.declinedUnsafe')} </b> : null}
              <b className="semi">{work.title}</b>
              {work.risk === '' ? null : (
                <span className="ink-2"> {t('intake.declinedRisk', { risk: work.risk })}</span>
              )}
            </span>
            <span className="ink-2">
              {t(work.answer === 'later' ? 'intake.declinedLater' : 'intake.declinedOn', {
                day: civilText(work.declinedOn, writing),
              })}
            </span>
            <span className="figure">{amountText(work.amount, writing)}</span>
          </li>
        ))}
      </ul>
    </div>
  );
}
