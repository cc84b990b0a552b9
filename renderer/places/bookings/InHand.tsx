import { useState } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { formatQuantity } from '../../../core/measure/quantity.ts';
import { clashesWith, personClashesWith } from '../../../core/order/bay-clash.ts';
import { spreadOver } from '../../../core/order/spread.ts';
import { timeShown } from '../../../core/time/time-shown.ts';
import { hrefOf } from '../../frame/router.ts';
import { Button } from '../../parts/Button.tsx';
import { Field } from '../../parts/Field.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { useSession } from '../../state/session.ts';
import { useOpenHours, useWriting } from '../../state/shop.ts';
import { t } from '../../words/t.ts';
import { weekdayText } from '../../words/times.ts';
import { readHours } from '../book-in/draft.ts';
import { Pick } from '../book-in/Talk.tsx';
import { type Place, type Planned, takesRoom } from './plan.ts';
import type { Hand, Plan } from './use-plan.ts';
import './week.css';

type Load = OutputOf<'booking.capacity'>['days'];

interface Props {
  readonly plan: Plan;
  readonly booked: readonly Planned[];
  readonly bays: OutputOf<'booking.list'>['bays'];
  readonly people: Load[number]['people'];
  readonly load: Load;
  readonly today: string;
}

/** The foot of the week: what is in hand read back as a sentence, with what it clashes with; else what was done last. */
export function InHand(props: Props) {
  const { plan, bays } = props;
  const writing = useWriting();
  // A day that is being typed is none yet.
  const say = (place: Place) =>
    place.day === ''
      ? ''
      : t('plan.place', {
          bay: bays.find((bay) => bay.id === place.bayId)?.name ?? '',
          day: weekdayText(Date.parse(`${place.day}T12:00Z`), { ...writing, zone: 'UTC' }),
          ...{ from: timeShown(place.from), hours: formatQuantity(place.hours, writing.decimal) },
        });
  const { hand, done } = plan;
  if (hand !== null) return <Open {...props} key={hand.one?.id ?? ''} hand={hand} say={say} />;
  const { undo } = done ?? { undo: null };
  return (
    <>
      <NotSaved error={plan.error} />
      {done === null ? null : (
        <div className="place-foot">
          <p role="status">{t(`plan.${done.what}`, { name: done.one.name, place: say(done.one.place) })}</p>
          {undo === null ? null : <Button onClick={() => void undo()}>{t('plan.putBack')}</Button>}
        </div>
      )}
    </>
  );
}

function Open({
  plan,
  booked,
  bays,
  people,
  load,
  today,
  hand,
  say,
}: Props & { readonly hand: Hand; readonly say: (place: Place) => string }) {
  const [tried, setTried] = useState(false);
  const blind = useSession((session) => session.person?.role === 'mechanic');
  const { one, place } = hand;
  const own = one === null || one.own;
  const whole = readHours(hand.hours) !== null && place.day !== '' && place.from !== '' && place.bayId !== '';
  const save = () => {
    setTried(true);
    if (whole) void plan.save();
  };
  return (
    <>
      <NotSaved error={plan.error} />
      <div className="place-foot week-hand">
        <div>
          <p aria-live="polite">
            <b>{one?.name ?? t('plan.keep')}</b> {say(place)}{' '}
            {one === null || own ? null : (
              <a className="link" href={hrefOf('orders', one.orderId)}>
                {t('plan.openOrder')}
              </a>
            )}
          </p>
          <Doubts hand={hand} booked={booked} bays={bays} load={load} />
          <div className="week-fields">
            {own ? (
              <Field
                label={t('plan.words')}
                value={hand.words}
                onChange={(words) => plan.type({ words })}
                maxLength={120}
                autoFocus={one === null}
                error={tried && hand.words.trim() === '' ? t('plan.wordsNeeded') : null}
              />
            ) : null}
            <Pick
              label={t('plan.by')}
              value={place.personId ?? ''}
              options={[
                { value: '', words: t('plan.nobody') },
                ...people.map((person) => ({ value: person.personId, words: person.name })),
              ]}
              onChange={(personId) => plan.put({ ...place, personId: personId === '' ? null : personId })}
            />
            <Pick
              label={t('intake.bay')}
              value={place.bayId}
              options={bays.map((bay) => ({ value: bay.id, words: `${bay.name} ${bay.words}`.trim() }))}
              onChange={(bayId) => plan.put({ ...place, bayId })}
            />
            <Field
              label={t('intake.day')}
              type="date"
              value={place.day}
              onChange={(day) => plan.put({ ...place, day })}
            />
            <Field
              label={t('intake.from')}
              type="time"
              value={place.from}
              onChange={(from) => plan.put({ ...place, from })}
            />
            <Field
              label={t('intake.hours')}
              value={hand.hours}
              onChange={(hours) => plan.type({ hours })}
              inputMode="decimal"
              error={whole ? null : t('plan.wrong')}
            />
          </div>
        </div>
        <div className="week-hand-acts">
          {one !== null && !one.own && one.look !== 'here' && one.look !== 'gone' && one.day <= today ? (
            <Button onClick={() => void plan.noShow(one)}>
              {t(one.look === 'no-show' ? 'plan.cameAfterAll' : 'plan.noShow')}
            </Button>
          ) : null}
          {one?.own ? <Button onClick={() => void plan.takeOut(one)}>{t('plan.takeOut')}</Button> : null}
          <Button keys="Esc" onClick={plan.leave}>
            {t('plan.leave')}
          </Button>
          <Button
            kind="go"
            keys="Ctrl+Enter"
            onClick={save}
            disabled={plan.busy}
            held={blind ? t('plan.deskMoves') : null}
          >
            {t(one === null ? 'plan.keepIt' : 'plan.put')}
          </Button>
        </div>
      </div>
    </>
  );
}

/** What speaks against the place: told, not forbidden. */
function Doubts({ hand, booked, bays, load }: Pick<Props, 'booked' | 'bays' | 'load'> & { readonly hand: Hand }) {
  const { decimal } = useWriting();
  const open = useOpenHours();
  const { one, place } = hand;
  const parts = place.day === '' ? [] : spreadOver({ ...place, orderId: one?.orderId ?? '' }, open);
  const others = booked
    .filter((other) => takesRoom(other) && other.orderId !== one?.orderId)
    .map((other) => ({ ...other, ...other.part }));
  const each = (clashes: typeof clashesWith) => {
    const found = parts.flatMap((part) => clashes(part, others));
    return found.filter((other, at) => found.findIndex(({ orderId }) => orderId === other.orderId) === at);
  };
  const bay = bays.find((other) => other.id === place.bayId)?.name ?? '';
  const told = [
    ...each(clashesWith).map((other) => t('plan.clashBay', { other: other.name, bay, from: timeShown(other.from) })),
    ...each(personClashesWith).map((other) =>
      t('plan.clashPerson', { person: other.person, other: other.name, from: timeShown(other.from) }),
    ),
  ];
  const clash = told.length > 0;
  // A bay that is kept takes hours of work only where somebody is to do it.
  const works = (booking: Pick<Planned, 'personId'>) => (one !== null && !one.own) || booking.personId !== null;
  const counted = one !== null && takesRoom(one) && works(one) ? spreadOver(one, open) : [];
  /** Hours that are left on a day, without what this booking takes of it now. */
  const freeOn = (on: string) => {
    const day = load.find((row) => row.day === on);
    return day === undefined ? null : day.free + (counted.find((part) => part.day === on)?.hours ?? 0);
  };
  const h = (thousandths: number) => formatQuantity(thousandths, decimal);
  const tight = works(place) ? parts.find(({ day, hours }) => hours > (freeOn(day) ?? hours)) : undefined;
  const free = tight === undefined ? null : freeOn(tight.day);
  if (tight !== undefined && free !== null)
    told.push(t(free > 0 ? 'plan.noRoom' : 'plan.noRoomAtAll', { free: h(free), hours: h(tight.hours) }));
  return (
    <p role="status" className="week-doubts">
      {told.length === 0 ? null : (
        <>
          <b className="in-heed">{told.join(' ')}</b> {clash ? t('plan.bothMay') : ''}
        </>
      )}
    </p>
  );
}
