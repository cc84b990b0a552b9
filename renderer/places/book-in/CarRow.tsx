import { readVin } from '../../../core/car/vin.ts';
import { Choice } from '../../parts/Choice.tsx';
import { Field } from '../../parts/Field.tsx';
import { VinCells } from '../../parts/VinCells.tsx';
import { useAsk } from '../../state/use-ask.ts';
import { t } from '../../words/t.ts';
import { Declined } from './Declined.tsx';
import type { Change, Draft, Errors } from './draft.ts';
import { Mileage } from './Mileage.tsx';
import { EMPTY_WALK } from './mark-draft.ts';
import { Talk } from './Talk.tsx';

interface Props {
  readonly draft: Draft;
  readonly change: Change;
  readonly errors: Errors;
  readonly doubted: boolean;
}

/** Which car: one of theirs or another; its VIN is checked, never refused; its mileage is held against the last. */
export function CarRow({ draft, change, errors, doubted }: Props) {
  const cars = useAsk('customer.get', draft.customerId === null ? null : { id: draft.customerId }).data?.cars ?? [];
  const life = useAsk('car.get', draft.carId === null ? null : { id: draft.carId }).data;
  const refused = draft.carId === null && readVin(draft.vin).verdict === 'refuse_character';
  const pick = (id: string) => {
    const car = cars.find((one) => one.id === id);
    change(
      car === undefined
        ? { carId: null, plate: '', words: '', vin: '', mileage: '', doubt: 'none', kept: [], walk: EMPTY_WALK }
        : {
            carId: id,
            plate: car.plate,
            words: car.words,
            vin: car.vin,
            unit: car.unit,
            mileage: '',
            doubt: 'none',
            kept: [],
            walk: EMPTY_WALK,
          },
    );
  };
  return (
    <Talk head={t('intake.car')}>
      {cars.length === 0 ? null : (
        <Choice
          label={t('intake.theirCars')}
          value={draft.carId ?? ''}
          options={[
            ...cars.map((car) => ({ value: car.id, words: `${car.plate} ${car.words}`.trim() })),
            { value: '', words: t('intake.anotherCar') },
          ]}
          onChange={pick}
        />
      )}
      {draft.carId === null ? (
        <div className="side-by-side">
          <Field
            label={t('intake.plate')}
            value={draft.plate}
            onChange={(plate) => change({ plate })}
            maxLength={16}
            error={errors.plate ?? null}
          />
          <Field
            label={t('intake.words')}
            value={draft.words}
            onChange={(words) => change({ words })}
            maxLength={120}
            error={errors.words ?? null}
          />
          <Field
            label={t('intake.year')}
            value={draft.year}
            onChange={(year) => change({ year })}
            maxLength={4}
            inputMode="numeric"
            error={errors.year ?? null}
          />
        </div>
      ) : null}
      {draft.carId === null ? (
        <>
          <VinCells
            value={draft.vin}
            onChange={(vin) => change({ vin })}
            note={refused ? '' : vinWords(draft.vin)}
            error={refused ? t('intake.vinCharacter') : null}
          />
          <Choice
            label={t('intake.unit')}
            value={draft.unit}
            options={[
              { value: 'km', words: t('intake.km') },
              { value: 'mi', words: t('intake.mi') },
            ]}
            onChange={(unit) => change({ unit })}
          />
        </>
      ) : draft.vin === '' ? null : (
        <p className="small ink-2">
          {draft.vin}. {vinWords(draft.vin)}
        </p>
      )}
      <Mileage draft={draft} change={change} errors={errors} doubted={doubted} />
      <Declined works={life?.declined ?? []} />
    </Talk>
  );
}

/** What the VIN says of itself: a warning, never a block. */
function vinWords(vin: string): string {
  if (vin === '') return '';
  const reading = readVin(vin);
  const digit = reading.expectedCheckDigit ?? '';
  switch (reading.verdict) {
    case 'ok':
      return reading.modelYears.length === 0
        ? t('intake.vinOk', { digit })
        : t('intake.vinOkYear', { digit, years: reading.modelYears.join(' / ') });
    case 'warn_check_digit':
      return t('intake.vinDigit', { digit });
    default:
      return t('intake.vinLength', { n: reading.vin.length });
  }
}
