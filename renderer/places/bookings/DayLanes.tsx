import type { OutputOf } from '../../../core/contract/index.ts';
import { spreadOver } from '../../../core/order/spread.ts';
import { instantToWall } from '../../../core/time/instant.ts';
import { useOpenHours, useWriting } from '../../state/shop.ts';
import { t } from '../../words/t.ts';
import { weekdayText } from '../../words/times.ts';
import type { Stretch } from '../book-in/bay-day.ts';
import { minutesOf } from '../today/strip/lay-out.ts';
import { Block } from './Block.tsx';
import { DayLoad } from './DayLoad.tsx';
import { inLanes, minutesTaken, type Place, type Planned, takesRoom } from './plan.ts';
import type { Hand } from './use-plan.ts';

interface Props {
  readonly day: string;
  readonly today: boolean;
  readonly now: number;
  readonly bays: OutputOf<'booking.list'>['bays'];
  readonly booked: readonly Planned[];
  readonly load: OutputOf<'booking.capacity'>['days'][number] | null;
  /** The hours that are drawn, in minutes. */
  readonly shown: Stretch;
  readonly hand: Hand | null;
  readonly onTake: (one: Planned) => void;
  readonly onPut: (place: Place) => void;
  readonly onDrop: (one: Planned, place: Place) => void;
  readonly onAway: (personId: string) => void;
}

const HOUR = 60;

/** One day: a lane a bay against the hours, and beside them whose hours there are. */
export function DayLanes(props: Props) {
  const { day, today, now, bays, booked, load, shown, hand } = props;
  const writing = useWriting();
  const [wide, minute] = [shown.to - shown.from, minutesOf(instantToWall(now, writing.zone).time)];
  const share = (minutes: number) => `${((minutes - shown.from) * 100) / wide}%`;
  const dayWords = weekdayText(Date.parse(`${day}T12:00Z`), { ...writing, zone: 'UTC' });
  const short = dayWords.replace(/ \S+$/, '');
  const open = useOpenHours();
  const going = hand === null ? null : spreadOver(hand.place, open).find((part) => part.day === day);
  return (
    <section className={today ? 'week-day now' : 'week-day'} aria-label={t('plan.dayOf', { day: dayWords })}>
      <h2>
        {short}
        {today ? <small>{t('plan.today')}</small> : null}
      </h2>
      <div className="week-lanes" style={{ minWidth: 0, ...{ '--hours': wide / HOUR } }}>
        <div className="week-hours" aria-hidden="true">
          {Array.from({ length: wide / HOUR + 1 }, (_, at) => shown.from + at * HOUR).map((hour) => (
            <span key={hour} style={{ left: share(hour) }}>
              {hour / HOUR}
            </span>
          ))}
        </div>
        {bays.map((bay) => {
          const mine = booked.filter((one) => one.bayId === bay.id);
          const lanes = inLanes(mine.filter(takesRoom), (one) => one.part);
          const aside = mine.filter((one) => !takesRoom(one));
          return (
            <div key={bay.id} className="week-bay">
              <span title={bay.words}>{bay.name}</span>
              <div
                className="week-lane"
                data-day={day}
                data-bay={bay.id}
                style={{ minWidth: 0, ...{ '--lanes': Math.max(1, lanes.length) } }}
              >
                {[...lanes, ...(aside.length === 0 ? [] : [aside])].flatMap((lane, at) =>
                  lane.map((one) => (
                    <Block
                      key={one.id}
                      one={one}
                      bay={bay.name}
                      dayWords={dayWords}
                      lane={takesRoom(one) ? at : 0}
                      shown={shown}
                      held={hand?.one?.id === one.id}
                      onTake={() => props.onTake(one)}
                      onDrop={(where) => props.onDrop(one, where)}
                      onPut={props.onPut}
                    />
                  )),
                )}
                {going?.bayId === bay.id ? (
                  <i className="week-going" style={spanOf(minutesTaken(going), share)} aria-hidden="true" />
                ) : null}
                {today && minute >= shown.from && minute <= shown.to ? (
                  <i className="week-minute" style={{ left: share(minute) }} aria-hidden="true" />
                ) : null}
              </div>
            </div>
          );
        })}
      </div>
      <DayLoad load={load} onAway={props.onAway} />
    </section>
  );
}

const spanOf = ({ from, to }: Stretch, share: (minutes: number) => string) => ({
  left: share(from),
  width: `calc(${share(to)} - ${share(from)})`,
});
