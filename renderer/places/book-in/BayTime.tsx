import { formatQuantity } from '../../../core/measure/quantity.ts';
import { clashesWith, personClashesWith } from '../../../core/order/bay-clash.ts';
import { spreadOver } from '../../../core/order/spread.ts';
import { addDays, weekday } from '../../../core/time/civil.ts';
import { instantToWall } from '../../../core/time/instant.ts';
import { timeShown } from '../../../core/time/time-shown.ts';
import { Field } from '../../parts/Field.tsx';
import { useOpenHours, useShop, useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { t } from '../../words/t.ts';
import { minutesOf } from '../today/strip/lay-out.ts';
import { freeFrom, type Stretch, takenMinutes, wallTime } from './bay-day.ts';
import { type BayDay, DayPicks } from './DayPicks.tsx';
import { readHours } from './draft.ts';
import { Pick } from './Talk.tsx';

/** A place in a bay as typed; no bay while `bayId` is ''. */
export interface BayDraft {
  readonly bayId: string;
  readonly day: string;
  readonly from: string;
  readonly hours: string;
  /** Who does it, '' for nobody yet; left out where it is not asked. */
  readonly personId?: string;
}

interface Props {
  readonly value: BayDraft;
  readonly onChange: (part: Partial<BayDraft>) => void;
  readonly error: string | null;
  /** Whose place it is, so that it does not clash with itself. */
  readonly orderId?: string;
}

/** So many days the garage works are offered, of so many that are asked about. */
const OFFERED = 7;
const DAYS_AHEAD = 20;
const HOUR = 60;
const QUARTER = 15;

/** A day, a bay and hours, held against what is booked: a picked day fills in the first gap of its emptiest bay. */
export function BayTime({ value, onChange, error, orderId = '' }: Props) {
  const writing = useWriting();
  const openHours = useOpenHours();
  const settings = useShop()?.settings;
  const now = instantToWall(Date.now(), writing.zone);
  const last = addDays(now.date, DAYS_AHEAD);
  const near = useAsk('booking.list', { from: now.date, to: last }).data;
  const far = useAsk('booking.list', value.day > last ? { from: value.day, to: value.day } : null).data;
  const load = useAsk('booking.capacity', { from: now.date, to: last }).data?.days ?? [];
  const works = settings?.workingWeekdays ?? [];
  const bays = near?.bays ?? [];
  const listed = [near, far].flatMap((one) => [
    ...(one?.rows ?? []).filter((row) => row.noShowAt === null && row.handedOverAt === null),
    ...(one?.internal ?? []).map((row) => ({ ...row, orderId: row.id, plate: '', car: row.words })),
  ]);
  const open: Stretch = {
    from: minutesOf(settings?.planOpens ?? '08:00'),
    to: minutesOf(settings?.planCloses ?? '18:00'),
  };
  const bayDays = (day: string): BayDay[] =>
    bays.map((bay) => ({
      bayId: bay.id,
      taken: listed
        .filter((row) => row.day === day && row.bayId === bay.id && row.orderId !== orderId)
        .map((row) => ({ from: minutesOf(row.from), to: minutesOf(row.from) + (row.hours * HOUR) / 1000 })),
    }));

  /** Hours that can still be promised, without what this order itself takes. */
  const freeOn = (day: string): number | null => {
    const row = load.find((one) => one.day === day);
    const own = listed.find((one) => one.orderId === orderId && one.day === day)?.hours ?? 0;
    return row === undefined ? null : row.free + own;
  };

  const fill = (day: string, bayId: string) => {
    const earliest = day === now.date ? Math.ceil(minutesOf(now.time) / QUARTER) * QUARTER : open.from;
    const rows = bayDays(day);
    const emptiest = rows.toSorted((a, b) => takenMinutes(a.taken, open) - takenMinutes(b.taken, open))[0];
    const bay = rows.find((row) => row.bayId === bayId) ?? emptiest;
    // Longer than a day it begins where a whole one is free.
    const need = Math.min(((readHours(value.hours) ?? 1000) * HOUR) / 1000, open.to - open.from);
    const from = bay === undefined ? null : freeFrom(bay.taken, open, need, earliest);
    onChange({ day, bayId: bay?.bayId ?? '', from: from === null ? value.from : wallTime(from) });
  };
  const whole = value.bayId !== '' && value.day !== '' && value.from !== '';
  const hours = readHours(value.hours) ?? 0;
  const mine = { orderId, ...value, personId: value.personId === '' ? null : value.personId, hours };
  const parts = whole ? spreadOver(mine, openHours) : [];
  const each = (clashes: typeof clashesWith) => {
    const found = parts.flatMap((part) => clashes(part, listed));
    return found.filter((other, at) => found.findIndex((one) => one.orderId === other.orderId) === at);
  };
  const tight = parts.find((part) => part.hours > (freeOn(part.day) ?? part.hours));
  const free = tight === undefined ? null : freeOn(tight.day);
  const h = (thousandths: number) => formatQuantity(thousandths, writing.decimal);
  return (
    <>
      {bays.length === 0 ? null : (
        <DayPicks
          days={Array.from({ length: DAYS_AHEAD + 1 }, (_, i) => addDays(now.date, i))
            .filter((day) => works.length === 0 || works.includes(weekday(day)))
            .slice(0, OFFERED)
            .map((day) => ({ day, bays: bayDays(day), free: freeOn(day) }))}
          needs={readHours(value.hours) ?? 0}
          bays={bays}
          open={open}
          chosen={value.bayId === '' ? '' : value.day}
          onPick={(day) => fill(day, value.bayId)}
        />
      )}
      <div className="side-by-side">
        <Pick
          label={t('intake.bay')}
          value={value.bayId}
          options={[
            { value: '', words: t('intake.noBay') },
            ...bays.map((bay) => ({ value: bay.id, words: `${bay.name} ${bay.words}`.trim() })),
          ]}
          onChange={(bayId) => (bayId === '' ? onChange({ bayId }) : fill(value.day || now.date, bayId))}
        />
        {value.bayId === '' ? null : (
          <>
            <Field label={t('intake.day')} type="date" value={value.day} onChange={(day) => onChange({ day })} />
            <Field label={t('intake.from')} type="time" value={value.from} onChange={(from) => onChange({ from })} />
            <Field
              label={t('intake.hours')}
              value={value.hours}
              onChange={(text) => onChange({ hours: text })}
              inputMode="decimal"
              error={error}
            />
          </>
        )}
      </div>
      {value.bayId === '' || value.personId === undefined || load.length === 0 ? null : (
        <Pick
          label={t('intake.by')}
          value={value.personId}
          options={[
            { value: '', words: t('intake.nobody') },
            ...(load[0]?.people ?? []).map((one) => ({ value: one.personId, words: one.name })),
          ]}
          onChange={(personId) => onChange({ personId })}
        />
      )}
      {each(clashesWith).map((other) => (
        <p key={other.orderId} className="small" role="status">
          <b className="in-heed">
            {t('intake.clash', { car: other.plate || other.car, bay: other.bay, from: timeShown(other.from) })}
          </b>{' '}
          {t('intake.clashHint')}
        </p>
      ))}
      {each(personClashesWith).map((other) => (
        <p key={other.orderId} className="small" role="status">
          <b className="in-heed">
            {t('plan.clashPerson', {
              person: other.person,
              other: other.plate || other.car,
              from: timeShown(other.from),
            })}
          </b>
        </p>
      ))}
      {tight !== undefined && free !== null ? (
        <p className="small" role="status">
          <b className="in-heed">
            {t(free > 0 ? 'plan.noRoom' : 'plan.noRoomAtAll', { free: h(free), hours: h(tight.hours) })}
          </b>
        </p>
      ) : null}
    </>
  );
}
