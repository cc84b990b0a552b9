import type { OutputOf } from '../../../../core/contract/index.ts';
import { formatQuantity } from '../../../../core/measure/quantity.ts';
import { spreadOver } from '../../../../core/order/spread.ts';
import { civilDateOf, instantToWall } from '../../../../core/time/instant.ts';
import { useOpenHours, useShop, useWriting } from '../../../state/shop.ts';
import { useAsk } from '../../../state/use-ask.ts';
import { t } from '../../../words/t.ts';
import { nearText, timeText } from '../../../words/times.ts';
import { at, goesOn, minutesTaken, plannedOf } from '../../bookings/plan.ts';
import type { Plan } from '../../bookings/use-plan.ts';
import { type Booked, DayStrip, type Moving, type Promised } from './DayStrip.tsx';
import { minutesOf } from './lay-out.ts';

type Row = OutputOf<'today.get'>['rows'][number];
type Booking = OutputOf<'booking.list'>['rows'][number];

const HOUR = 60;

interface Props {
  readonly rows: readonly Row[];
  readonly now: number;
  /** What is moved, by mouse or by keys. */
  readonly plan: Plan;
}

/** Today's bays with their cars, and what was promised: of open orders, for today or before. */
export function Day({ rows, now, plan }: Props) {
  const writing = useWriting();
  const settings = useShop()?.settings;
  const open = useOpenHours();
  const today = civilDateOf(now, writing.zone);
  const { data } = useAsk('booking.list', { from: today, to: today });
  if (data === undefined || !settings) return null;
  const minute = minutesOf(instantToWall(now, writing.zone).time);
  const orders = new Map(rows.map((row) => [row.orderId, row]));
  const booked = [...data.rows.map((row) => blockOf(row, orders.get(row.orderId))), ...data.internal.map(keptOf)];
  const promised = rows.flatMap((row): Promised[] => {
    if (row.promiseAt === null || row.next.promise === 'none') return [];
    const wall = instantToWall(row.promiseAt, writing.zone);
    if (wall.date > today) return [];
    const block = booked.find((one) => one.orderId === row.orderId);
    // What was promised before today hangs where its slot begins, else at this minute.
    const hangs = wall.date === today ? minutesOf(wall.time) : (block?.from ?? minute);
    return [
      {
        orderId: row.orderId,
        bayId: block?.bayId ?? '',
        at: hangs,
        time: nearText(row.promiseAt, writing, now),
        // In its bay the car stands beside it; elsewhere the pennant says whose it is.
        words: block === undefined ? `${nearText(row.promiseAt, writing, now)} ${row.plate}`.trim() : '',
        plate: row.plate,
        promise: row.next.promise,
      },
    ];
  });
  const planned = plannedOf(data);
  const ofId = (id: string) => planned.find((one) => one.id === id);
  const { hand } = plan;
  const going = hand === null ? undefined : spreadOver(hand.place, open).find((part) => part.day === today);
  const moving: Moving = {
    held: hand?.one?.id ?? null,
    going: going === undefined ? null : { bayId: going.bayId, ...minutesTaken(going) },
    onTake: (id) => {
      const one = ofId(id);
      if (one !== undefined) plan.take(one, one);
    },
    onPut: (id, bayId, begins) => {
      const one = ofId(id);
      // A later day of a long booking is moved by its first.
      if (one !== undefined && !goesOn(one)) plan.put(at({ ...one, bayId }, begins));
    },
    onDrop: (id, bayId, begins) => {
      const one = ofId(id);
      if (one !== undefined && !goesOn(one)) void plan.drop(one, at({ ...one, bayId }, begins));
    },
  };
  return (
    <>
      <DayStrip
        moving={moving}
        bays={data.bays}
        booked={booked}
        promised={promised}
        now={minute}
        nowText={timeText(now, writing)}
        opens={minutesOf(settings.planOpens)}
        closes={minutesOf(settings.planCloses)}
      />
      <Hours day={today} />
    </>
  );
}

/** Whose hours there are today, and how many of them can still be promised. */
function Hours({ day }: { readonly day: string }) {
  const { decimal } = useWriting();
  const load = useAsk('booking.capacity', { from: day, to: day }).data?.days[0];
  if (load === undefined || load.people.length === 0) return null;
  const h = (thousandths: number) => formatQuantity(thousandths, decimal);
  const { free, planned } = load;
  return (
    <p className="strip-people">
      <span>
        {load.people
          .filter((one) => one.hours > 0)
          .map((one) =>
            one.present === 0
              ? t('plan.personAway', { name: one.name })
              : t('plan.personHours', { name: one.name, present: h(one.present) }),
          )
          .join('; ')}
      </span>
      <b className={free < 0 ? 'in-stop' : 'semi'}>
        {free < 0
          ? t('plan.over', { over: h(-free), planned: h(planned) })
          : t('plan.free', { free: h(free), planned: h(planned) })}
      </b>
    </p>
  );
}

/** A booking without a car: a lift that is examined, a bay kept free. */
function keptOf(booking: OutputOf<'booking.list'>['internal'][number]): Booked {
  const from = minutesOf(booking.from);
  const to = Math.min(24 * HOUR, from + (booking.hours * HOUR) / 1000);
  return {
    id: booking.id,
    orderId: booking.id,
    bayId: booking.bayId,
    from,
    to,
    plate: '',
    words: booking.words,
    look: 'kept',
  };
}

function blockOf(booking: Booking, row: Row | undefined): Booked {
  const from = minutesOf(booking.from);
  const people = row?.clocks.map((clock) => clock.person) ?? [];
  const gone = booking.handedOverAt !== null;
  const worked = people.length > 0;
  return {
    id: booking.bookingId,
    orderId: booking.orderId,
    bayId: booking.bayId,
    from,
    to: Math.min(24 * HOUR, from + (booking.hours * HOUR) / 1000),
    plate: booking.plate,
    words: [booking.car, ...(worked ? people : [booking.complaint])].filter((one) => one !== '').join(', '),
    look:
      booking.noShowAt !== null
        ? 'missed'
        : gone
          ? 'gone'
          : worked
            ? 'worked'
            : booking.arrivedAt !== null && row !== undefined && row.next.whose !== 'ours'
              ? 'still'
              : 'booked',
  };
}
