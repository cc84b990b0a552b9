import { Choice } from '../../parts/Choice.tsx';
import { Field } from '../../parts/Field.tsx';
import { t } from '../../words/t.ts';

export interface Unit {
  readonly name: string;
  readonly serial: string;
}

/** Units of a car that hold fluid, by the words a garage has for them. */
const UNITS = ['rear', 'front', 'gearbox', 'transfer', 'engine'] as const;

interface Props {
  readonly value: Unit;
  readonly onChange: (unit: Unit) => void;
  /** Names that this car's units have had before. */
  readonly known: readonly string[];
}

/** Which unit of the car: its history goes by the serial number, and without one by the name on this car. */
export function UnitOfCar({ value, onChange, known }: Props) {
  const names = [...new Set([...known, ...UNITS.map((unit) => t(`bench.unit-${unit}`))])].slice(0, 6);
  return (
    <div className="unit-of-car">
      <Choice
        label={t('bench.unit')}
        value={names.includes(value.name) ? value.name : null}
        options={names.map((name) => ({ value: name, words: name }))}
        onChange={(name) => onChange({ ...value, name })}
      />
      <div className="work-fields">
        <Field
          label={t('bench.unitOther')}
          value={value.name}
          maxLength={80}
          onChange={(name) => onChange({ ...value, name })}
        />
        <Field
          label={t('bench.serial')}
          value={value.serial}
          maxLength={60}
          onChange={(serial) => onChange({ ...value, serial })}
        />
      </div>
    </div>
  );
}
