import { Page } from '../../frame/Page.tsx';
import { hrefOf } from '../../frame/router.ts';
import { Cell } from '../../parts/Cell.tsx';
import { act, ask } from '../../state/call.ts';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { amountText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { civilText, dayText } from '../../words/times.ts';
import { Talk } from '../book-in/Talk.tsx';
import { fieldSaver } from '../customers/field-saver.ts';
import { CarMileage } from './CarMileage.tsx';
import '../customers/list.css';

const FIELDS = [
  ['words', 'cars.words'],
  ['vin', 'cars.vin'],
  ['axleCode', 'cars.axle'],
  ['note', 'cars.note'],
] as const;

/** One car: what it is, its mileage, its visits and the work somebody said no to. */
export function CarPage({ id }: { readonly id: string }) {
  const writing = useWriting();
  const { data, error } = useAsk('car.get', { id });
  if (data === undefined)
    return <Page title={t('cars.title')}>{error ? <p role="alert">{errorSentence(error, writing)}</p> : null}</Page>;
  const { fields, owner, visits, declined } = data;
  const now = Date.now();
  return (
    <Page
      title={`${fields.plate} ${fields.words}`.trim()}
      words={owner === null ? t('cars.noOwner') : <a href={hrefOf('customers', owner.id)}>{owner.name}</a>}
    >
      <Talk head={t('cars.about')}>
        <dl className="list-fields">
          {FIELDS.map(([field, words]) => (
            <div key={field}>
              <dt>{t(words)}</dt>
              <dd>
                <Cell
                  label={t(words)}
                  value={fields[field]}
                  save={fieldSaver(field, {
                    row: data,
                    send: ({ revision, fields }) => act('car.change', { id, revision, change: fields }),
                    read: () => ask('car.get', { id }),
                  })}
                />
              </dd>
            </div>
          ))}
        </dl>
      </Talk>
      <Talk head={t('cars.visits')}>
        {visits.length === 0 ? <p className="ink-2">{t('cars.noVisits')}</p> : null}
        <ul className="list-rows">
          {visits.map((visit) => (
            <li key={visit.orderId}>
              <div>
                <a href={hrefOf('orders', visit.orderId)}>{t('cars.order', { number: visit.number })}</a>
                <span>{dayText(visit.openedAt, writing, now)}</span>
                <span>{visit.jobs.map((job) => `${job.letter} ${job.title}`).join(', ') || visit.complaint}</span>
                <span className="figure">
                  {visit.invoice === null ? null : amountText(visit.invoice.gross, writing)}
                </span>
              </div>
            </li>
          ))}
        </ul>
      </Talk>
      {declined.length === 0 ? null : (
        <Talk head={t('cars.declined')}>
          <ul className="list-rows">
            {declined.map((work) => (
              <li key={work.decisionId + work.jobId}>
                <div>
                  <b>{work.title}</b>
                  <span>{civilText(work.declinedOn, writing)}</span>
                  <span>
                    {work.unsafe ? <b className="in-stop">{t('cars.unsafe')} </b> : null}
                    {work.risk === '' ? null : t('cars.risk', { risk: work.risk })}
                  </span>
                  <span className="figure">{amountText(work.amount, writing)}</span>
                </div>
              </li>
            ))}
          </ul>
        </Talk>
      )}
      <CarMileage id={id} unit={fields.unit} readings={data.readings} />
      <Talk head={t('cars.owners')}>
        <ul className="list-rows">
          {[
            ...data.owners.map((one) => ({ ...one, what: one.name })),
            ...data.plates.map((one) => ({ ...one, what: one.plate })),
          ].map((one) => (
            <li key={one.what + one.from}>
              <div>
                <b>{one.what}</b>
                <span>
                  {one.to === null
                    ? t('cars.from', { from: civilText(one.from, writing) })
                    : t('cars.fromTo', { from: civilText(one.from, writing), to: civilText(one.to, writing) })}
                </span>
              </div>
            </li>
          ))}
        </ul>
      </Talk>
    </Page>
  );
}
