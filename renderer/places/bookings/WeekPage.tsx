import { useEffect, useState } from 'react';
import { addDays } from '../../../core/time/civil.ts';
import { civilDateOf } from '../../../core/time/instant.ts';
import { useKey } from '../../frame/keys.ts';
import { Page } from '../../frame/Page.tsx';
import { goTo } from '../../frame/router.ts';
import { Button } from '../../parts/Button.tsx';
import { useNow } from '../../state/now.ts';
import { useShop, useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { t } from '../../words/t.ts';
import { civilText } from '../../words/times.ts';
import { hoursShown, minutesOf } from '../today/strip/lay-out.ts';
import { Away } from './Away.tsx';
import { CalendarFile } from './CalendarFile.tsx';
import { DayLanes } from './DayLanes.tsx';
import { useFocusOnMoved, useHandKeys } from './hand-keys.ts';
import { InHand } from './InHand.tsx';
import { minutesTaken, plannedOf, shownDays, stepped, weekOf } from './plan.ts';
import { usePlan } from './use-plan.ts';
import './week.css';

const WEEK = 7;
/** A week of bays against hours, with the hours of the people: what is booked is moved by mouse or by keys. */
export function WeekPage({ day }: { readonly day: string | undefined }) {
  const writing = useWriting();
  const settings = useShop()?.settings;
  const now = useNow(30_000);
  const today = civilDateOf(now, writing.zone);
  const monday = weekOf(day ?? today);
  const span = { from: monday, to: addDays(monday, WEEK - 1) };
  const listed = useAsk('booking.list', span);
  const load = useAsk('booking.capacity', span).data;
  const plan = usePlan();
  const [away, setAway] = useState<{ personId: string; day: string } | null>(null);

  const bays = listed.data?.bays ?? [];
  const booked = listed.data === undefined ? [] : plannedOf(listed.data);
  const days = shownDays(
    monday,
    settings?.workingWeekdays ?? [],
    booked.map(({ part }) => part),
  );
  const { hand } = plan;
  const week = (by: number) => {
    if (hand !== null) plan.put({ ...hand.place, day: addDays(hand.place.day, by * WEEK) });
    goTo('today', 'week', addDays(monday, by * WEEK));
  };
  useKey('PageDown', () => week(1));
  useKey('PageUp', () => week(-1));
  useKey('Esc', () => (away !== null ? setAway(null) : hand !== null ? plan.leave() : goTo('today')));
  useKey('Ctrl+Enter', () => void plan.save(), hand !== null);

  const [opens, closes] = [minutesOf(settings?.planOpens ?? '08:00'), minutesOf(settings?.planCloses ?? '18:00')];
  const taken = booked.map(({ part }) => minutesTaken(part)).flatMap(({ from, to }) => [from, to]);
  const shown = hoursShown(opens, closes, taken);
  const keep = () => {
    setAway(null);
    const first = days.find((one) => one >= today) ?? days[0] ?? monday;
    plan.take(null, {
      ...{ bayId: bays[0]?.id ?? '', day: first, from: settings?.planOpens ?? '08:00' },
      ...{ hours: 1000, personId: null },
    });
  };
  const people = load?.days[0]?.people ?? [];
  useHandKeys(
    hand,
    (step) => {
      if (hand !== null)
        plan.put(
          stepped(
            hand.place,
            step,
            days,
            bays.map((bay) => bay.id),
          ),
        );
    },
    () => void plan.save(),
  );
  // Where it would go stays in sight.
  const going = hand === null ? '' : `${hand.place.day} ${hand.place.bayId}`;
  useEffect(() => {
    if (going !== '') document.querySelector('.week-going')?.scrollIntoView({ block: 'nearest' });
  }, [going]);
  useFocusOnMoved(plan.done, listed.data);
  return (
    <Page
      title={t('plan.title')}
      words={t('plan.from', { day: civilText(span.from, writing), last: civilText(span.to, writing) })}
      actions={
        <>
          <Button small keys="PageUp" onClick={() => week(-1)}>
            {t('plan.before')}
          </Button>
          <Button small onClick={() => goTo('today', 'week')}>
            {t('plan.thisWeek')}
          </Button>
          <Button small keys="PageDown" onClick={() => week(1)}>
            {t('plan.next')}
          </Button>
        </>
      }
      foot={
        away !== null ? (
          <Away key={`${away.personId} ${away.day}`} people={people} start={away} onEnd={() => setAway(null)} />
        ) : (
          <InHand plan={plan} booked={booked} bays={bays} people={people} load={load?.days ?? []} today={today} />
        )
      }
    >
      <div className="week-acts">
        <p className="small ink-2">{t('plan.keys')}</p>
        <Button small onClick={keep}>
          {t('plan.keep')}
        </Button>
        <Button
          small
          onClick={() => {
            plan.leave();
            setAway({ personId: people[0]?.personId ?? '', day: days.find((one) => one >= today) ?? monday });
          }}
        >
          {t('plan.away')}
        </Button>
        <CalendarFile from={span.from} to={span.to} />
      </div>
      {listed.error && !listed.data ? <p role="alert">{errorSentence(listed.error, writing)}</p> : null}
      {listed.data !== undefined && days.length === 0 ? <p>{t('plan.none')}</p> : null}
      <div className="week">
        {days.map((one) => (
          <DayLanes
            key={one}
            day={one}
            today={one === today}
            now={now}
            bays={bays}
            booked={booked.filter((row) => row.part.day === one)}
            load={load?.days.find((row) => row.day === one) ?? null}
            shown={shown}
            hand={hand}
            onTake={(row) => {
              setAway(null);
              plan.take(row, row);
            }}
            onPut={plan.put}
            onDrop={(row, place) => void plan.drop(row, place)}
            onAway={(personId) => {
              plan.leave();
              setAway({ personId, day: one });
            }}
          />
        ))}
      </div>
    </Page>
  );
}
