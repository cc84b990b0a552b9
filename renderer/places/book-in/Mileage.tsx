import { checkReading } from '../../../core/car/odometer.ts';
import { civilDateOf } from '../../../core/time/instant.ts';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { Field } from '../../parts/Field.tsx';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { wholeText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { civilText } from '../../words/times.ts';
import { type Change, type Draft, type Errors, readMileageText } from './draft.ts';

interface Props {
  readonly draft: Draft;
  readonly change: Change;
  readonly errors: Errors;
  /** The shop held the booking because the mileage is lower than the last one. */
  readonly doubted: boolean;
}

/** The mileage against the last one: nothing is guessed, the desk says what happened. */
export function Mileage({ draft, change, errors, doubted }: Props) {
  const writing = useWriting();
  const readings = useAsk('car.get', draft.carId === null ? null : { id: draft.carId }).data?.readings ?? [];
  const typed = readMileageText(draft.mileage);
  const newest = [...readings].sort((one, other) => one.on.localeCompare(other.on)).at(-1);
  const last =
    newest === undefined
      ? null
      : { on: newest.on, distance: newest.event === 'replaced' ? (newest.newStart ?? 0) : newest.reading };
  const today = civilDateOf(Date.now(), writing.zone);
  const check = last !== null && typed !== null ? checkReading(last, { on: today, distance: typed }, draft.unit) : null;
  const whole = (figure: number) => wholeText(figure, writing);

  const note = () => {
    if (last === null || typed === null || check === null) return undefined;
    const figures = {
      last: whole(last.distance),
      typed: whole(typed),
      day: civilText(last.on, writing),
      more: whole(typed - last.distance),
    };
    if (check.lower) return <b className="in-heed">{t('intake.mileageLower', figures)}</b>;
    if (check.tooFar) return <b className="in-heed">{t('intake.mileageFar', figures)}</b>;
    return t('intake.mileageLast', figures);
  };
  const words = note();
  return (
    <>
      <div className="side-by-side">
        <Field
          label={t('intake.mileage', { unit: t(`intake.${draft.unit}`) })}
          value={draft.mileage}
          onChange={(mileage) => change({ mileage, doubt: 'none' })}
          inputMode="numeric"
          maxLength={12}
          error={errors.mileage ?? errors.doubt ?? null}
          {...(words === undefined ? {} : { note: words })}
        />
      </div>
      {check?.fitsAsOtherUnit ? (
        <p>
          {t('intake.mileageUnit')}:{' '}
          <Button small onClick={() => change({ mileage: String(check.otherUnit), doubt: 'none' })}>
            {t('intake.useOther', { figure: whole(check.otherUnit) })}
          </Button>
        </p>
      ) : null}
      {check?.lower || doubted ? (
        <div className="mileage-doubt">
          <Choice
            label={t('intake.doubt')}
            value={draft.doubt === 'none' ? null : draft.doubt}
            options={[
              { value: 'as-typed', words: t('intake.asTyped') },
              { value: 'clock-replaced', words: t('intake.clockReplaced') },
              { value: 'owner-told', words: t('intake.ownerTold') },
            ]}
            onChange={(doubt) => change({ doubt })}
          />
        </div>
      ) : null}
    </>
  );
}
