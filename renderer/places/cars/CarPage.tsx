import { useState } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { Page } from '../../frame/Page.tsx';
import { goTo, hrefOf } from '../../frame/router.ts';
import { LabOfCar } from '../../lab/LabOfCar.tsx';
import { Button } from '../../parts/Button.tsx';
import { Empty } from '../../parts/Empty.tsx';
import { Loading } from '../../parts/Loading.tsx';
import { Plate } from '../../parts/Plate.tsx';
import { useSession } from '../../state/session.ts';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { amountText, wholeText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { Talk } from '../book-in/Talk.tsx';
import { Ahead } from './Ahead.tsx';
import { CarFields } from './CarFields.tsx';
import { CarMarks } from './CarMarks.tsx';
import { CarMileage } from './CarMileage.tsx';
import { History } from './History.tsx';
import { askAgainPoints, aYear, goneSoFar, visitPoints } from './life.ts';
import { aheadPoints, lifeEvents } from './life-events.ts';
import { MileageRuler } from './MileageRuler.tsx';
import { PlateAndOwner } from './PlateAndOwner.tsx';
import { DeclinedWork, PastVisits, Visits } from './Visits.tsx';
import { WhereNow } from './WhereNow.tsx';
import '../customers/list.css';
import './car.css';

type Car = OutputOf<'car.get'>;

/** One car: its life on a ruler, its visits, what was said no to, what it is, its readings, owners and plates. */
export function CarPage({ id }: { readonly id: string }) {
  const writing = useWriting();
  const { data, error, loading } = useAsk('car.get', { id });
  const desk = useSession((session) => session.person?.role !== 'mechanic');
  const reminders = useAsk('reminder.list', desk ? { carId: id } : null).data?.rows ?? [];
  const [history, showHistory] = useState(false);
  if (data === undefined)
    return (
      <Page title={t('cars.title')}>
        {error ? <Empty>{errorSentence(error, writing)}</Empty> : null}
        {loading ? <Loading rows={8} /> : null}
      </Page>
    );
  const { fields, owner } = data;
  const visits = visitPoints(data, writing.zone);
  const again = [...askAgainPoints(data), ...aheadPoints(data, reminders)];
  const events = lifeEvents(data);
  return (
    <Page
      title={
        <>
          {fields.plate === '' ? null : <Plate plate={fields.plate} big />} {fields.words}
          {fields.year === null ? '' : `, ${fields.year}`}
        </>
      }
      words={
        <>
          {owner === null ? t('cars.noOwner') : <a href={hrefOf('customers', owner.id)}>{owner.name}</a>}
          {owner === null || owner.phone === '' ? null : `, ${owner.phone}`}
        </>
      }
      actions={
        <>
          {desk ? (
            <Button expanded={history} onClick={() => showHistory(!history)}>
              {t('cars.history')}
            </Button>
          ) : null}
          <Button kind="go" onClick={() => goTo('today', 'book', 'car', id)}>
            {t('cars.newOrder')}
          </Button>
        </>
      }
    >
      <WhereNow visits={data.visits} />
      {history ? <History carId={id} /> : null}
      <section className="car-part">
        <h2>
          {t('cars.life')} <span className="car-beside">{lifeWords(data, writing)}</span>
        </h2>
        <MileageRuler visits={visits} again={again} events={events} unit={fields.unit} />
      </section>
      <LabOfCar carId={id} visits={visits} life={[...visits, ...again, ...events].map((point) => point.distance)} />
      <section className="car-part">
        <h2>
          {t('cars.visits')} <span className="car-beside">{spentWords(data, writing)}</span>
        </h2>
        {data.visits.length === 0 && data.pastVisits.length > 0 ? null : <Visits visits={data.visits} />}
        <PastVisits visits={data.pastVisits} />
      </section>
      {data.declined.length === 0 ? null : (
        <section className="car-part">
          <h2>{t('cars.declined')}</h2>
          <DeclinedWork works={data.declined} />
        </section>
      )}
      {desk ? (
        <section className="car-part">
          <h2>{t('reminders.ahead')}</h2>
          <Ahead carId={id} unit={fields.unit} reminders={reminders} />
        </section>
      ) : null}
      <CarMarks carId={id} />
      <Talk head={t('cars.about')}>
        <CarFields car={data} />
      </Talk>
      <CarMileage id={id} unit={fields.unit} readings={data.readings} />
      <Talk head={t('cars.owners')}>
        <PlateAndOwner car={data} />
      </Talk>
    </Page>
  );
}

type Writing = ReturnType<typeof useWriting>;

function lifeWords(car: Car, writing: Writing): string {
  const gone = goneSoFar(car);
  if (gone === null) return t('cars.noReadings');
  const distance = (figure: number) =>
    t(car.fields.unit === 'km' ? 'cars.kilometres' : 'cars.miles', { figure: wholeText(figure, writing) });
  const pace = aYear(car);
  return pace === null ? distance(gone) : t('cars.lifeWords', { gone: distance(gone), pace: wholeText(pace, writing) });
}

function spentWords(car: Car, writing: Writing): string {
  const n = car.visits.length + car.pastVisits.length;
  const sums = car.visits.map((visit) => visit.invoice?.gross ?? 0);
  const seen = car.visits.every((visit) => visit.invoice === null || visit.invoice.gross !== null);
  const sum = sums.reduce((all, one) => all + one, 0);
  if (n === 0) return '';
  return seen && sum > 0 ? t('cars.visitsWorth', { n, sum: amountText(sum, writing) }) : t('cars.visitCount', { n });
}
