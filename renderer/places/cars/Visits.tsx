import type { OutputOf } from '../../../core/contract/index.ts';
import { hrefOf } from '../../frame/router.ts';
import { useWriting } from '../../state/shop.ts';
import { amountText, wholeText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { civilText, dayText } from '../../words/times.ts';

type Car = OutputOf<'car.get'>;

/** Each visit a row: when, at which mileage, what was done, its order and its invoice. */
export function Visits({ visits }: { readonly visits: Car['visits'] }) {
  const writing = useWriting();
  const now = Date.now();
  if (visits.length === 0) return <p className="ink-2">{t('cars.noVisits')}</p>;
  return (
    <ul className="car-rows">
      {visits.map((visit) => {
        const mileage = visit.mileageOut ?? visit.mileageIn;
        return (
          <li key={visit.orderId}>
            <a href={hrefOf('orders', visit.orderId)}>
              <span>{dayText(visit.openedAt, writing, now)}</span>
              <span className="figure">{mileage === null ? '' : wholeText(mileage, writing)}</span>
              <b className="semi">{visit.jobs.map((job) => job.title).join(', ') || visit.complaint}</b>
              <span className="figure ink-2">{t('cars.order', { number: visit.number })}</span>
              <span className="figure">
                {visit.invoice === null ? t('cars.noInvoice') : amountText(visit.invoice.gross, writing)}
              </span>
            </a>
          </li>
        );
      })}
    </ul>
  );
}

/** Visits before this program, as the old books have them. */
export function PastVisits({ visits }: { readonly visits: Car['pastVisits'] }) {
  const writing = useWriting();
  return (
    <ul className="car-rows">
      {visits.map((visit) => (
        <li key={visit.id}>
          <div>
            <span>{civilText(visit.on, writing)}</span>
            <span className="figure">{visit.mileage === null ? '' : wholeText(visit.mileage, writing)}</span>
            <span>{visit.words}</span>
            <span className="ink-2">{t('cars.oldBooks')}</span>
            <span className="figure">{amountText(visit.amount, writing)}</span>
          </div>
        </li>
      ))}
    </ul>
  );
}

/** Work somebody said no to: when, what it would have cost, and what they were told. */
export function DeclinedWork({ works }: { readonly works: Car['declined'] }) {
  const writing = useWriting();
  return (
    <ul className="car-rows">
      {works.map((work) => (
        <li key={work.decisionId + work.jobId}>
          <a href={hrefOf('orders', work.orderId)}>
            <span>{civilText(work.declinedOn, writing)}</span>
            <span className="figure">{work.mileage === null ? '' : wholeText(work.mileage, writing)}</span>
            <span>
              {work.unsafe ? <b className="in-stop">{t('cars.unsafe')} </b> : null}
              <b className="semi">{work.title}</b>
              {work.risk === '' ? null : <span className="ink-2"> {t('cars.risk', { risk: work.risk })}</span>}
            </span>
            <span className="figure ink-2">
              {work.followUpOn === null ? '' : t('cars.askAgain', { day: civilText(work.followUpOn, writing) })}
            </span>
            <span className="figure">{amountText(work.amount, writing)}</span>
          </a>
        </li>
      ))}
    </ul>
  );
}
