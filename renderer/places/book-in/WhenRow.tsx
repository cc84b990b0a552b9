import { clashesWith } from '../../../core/order/bay-clash.ts';
import { addDays } from '../../../core/time/civil.ts';
import { civilDateOf, instantToWall } from '../../../core/time/instant.ts';
import { Field } from '../../parts/Field.tsx';
import { useShop, useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { t } from '../../words/t.ts';
import { minutesOf } from '../today/strip/lay-out.ts';
import { freeFrom, type Stretch, takenMinutes, wallTime } from './bay-day.ts';
import { type BayDay, DayPicks } from './DayPicks.tsx';
import { type Change, type Draft, type Errors, readHours } from './draft.ts';
import { Pick, Talk } from './Talk.tsx';

interface Props {
  readonly draft: Draft;
  readonly change: Change;
  readonly errors: Errors;
}

const DAYS_AHEAD = 6;
const HOUR = 60;

/** When: a day and a bay for some hours, held against what is booked, and what the customer is promised. */
export function WhenRow({ draft, change, errors }: Props) {
  const writing = useWriting();
  const settings = useShop()?.settings;
  const now = instantToWall(Date.now(), writing.zone);
  const last = addDays(now.date, DAYS_AHEAD);
  const near = useAsk('booking.list', { from: now.date, to: last }).data;
  const far = useAsk('booking.list', draft.day > last ? { from: draft.day, to: draft.day } : null).data;
  const bays = near?.bays ?? [];
  const listed = [...(near?.rows ?? []), ...(far?.rows ?? [])];
  const open: Stretch = {
    from: minutesOf(settings?.planOpens ?? '08:00'),
    to: minutesOf(settings?.planCloses ?? '18:00'),
  };
  const need = ((readHours(draft.hours) ?? 1000) * HOUR) / 1000;
  const bayDays = (day: string): BayDay[] =>
    bays.map((bay) => ({
      bayId: bay.id,
      taken: listed
        .filter((row) => row.day === day && row.bayId === bay.id)
        .map((row) => ({ from: minutesOf(row.from), to: minutesOf(row.from) + (row.hours * HOUR) / 1000 })),
    }));

  const fill = (day: string, bayId: string) => {
    const earliest = day === now.date ? Math.ceil(minutesOf(now.time) / 15) * 15 : open.from;
    const rows = bayDays(day);
    const emptiest = rows.toSorted((a, b) => takenMinutes(a.taken, open) - takenMinutes(b.taken, open))[0];
    const bay = rows.find((row) => row.bayId === bayId) ?? emptiest;
    const from = bay === undefined ? null : freeFrom(bay.taken, open, need, earliest);
    change({
      day,
      bayId: bay?.bayId ?? '',
      from: from === null ? draft.from : wallTime(from),
      ...(day > now.date ? { here: false } : {}),
    });
  };
  const clashes =
    draft.bayId === '' || draft.day === '' || draft.from === ''
      ? []
      : clashesWith(
          { orderId: '', bayId: draft.bayId, day: draft.day, from: draft.from, hours: readHours(draft.hours) ?? 0 },
          listed,
        );
  return (
    <Talk head={t('intake.when')} words={t('intake.whenWords')}>
      {bays.length === 0 ? null : (
        <DayPicks
          days={Array.from({ length: DAYS_AHEAD + 1 }, (_, i) => addDays(now.date, i)).map((day) => ({
            day,
            bays: bayDays(day),
          }))}
          bays={bays}
          open={open}
          chosen={draft.bayId === '' ? '' : draft.day}
          onPick={(day) => fill(day, draft.bayId)}
        />
      )}
      <div className="side-by-side">
        <Pick
          label={t('intake.bay')}
          value={draft.bayId}
          options={[
            { value: '', words: t('intake.noBay') },
            ...bays.map((bay) => ({ value: bay.id, words: `${bay.name} ${bay.words}`.trim() })),
          ]}
          onChange={(bayId) =>
            bayId === '' ? change({ bayId }) : fill(draft.day || civilDateOf(Date.now(), writing.zone), bayId)
          }
        />
        {draft.bayId === '' ? null : (
          <>
            <Field label={t('intake.day')} type="date" value={draft.day} onChange={(day) => change({ day })} />
            <Field label={t('intake.from')} type="time" value={draft.from} onChange={(from) => change({ from })} />
            <Field
              label={t('intake.hours')}
              value={draft.hours}
              onChange={(hours) => change({ hours })}
              inputMode="decimal"
              error={errors.hours ?? null}
            />
          </>
        )}
      </div>
      {clashes.map((other) => (
        <p key={other.orderId} className="small" role="status">
          <b className="in-heed">
            {t('intake.clash', { car: other.plate || other.car, bay: other.bay, from: other.from })}
          </b>{' '}
          {t('intake.clashHint')}
        </p>
      ))}
      <div className="side-by-side">
        <Field
          label={t('intake.promise')}
          type="datetime-local"
          value={draft.promise}
          onChange={(promise) => change({ promise })}
          error={errors.promise ?? null}
        />
        <Field
          label={t('intake.promiseWords')}
          value={draft.promiseWords}
          onChange={(promiseWords) => change({ promiseWords })}
          maxLength={80}
        />
      </div>
      <div className="side-by-side">
        <Field
          label={t('intake.ownMost')}
          value={draft.ownMost}
          onChange={(ownMost) => change({ ownMost })}
          inputMode="decimal"
          error={errors.ownMost ?? null}
        />
        <Field label={t('intake.po')} value={draft.po} onChange={(po) => change({ po })} maxLength={60} />
      </div>
    </Talk>
  );
}
