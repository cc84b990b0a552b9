import { readVin } from '../../../core/car/vin.ts';
import type { OutputOf } from '../../../core/contract/index.ts';
import { Cell } from '../../parts/Cell.tsx';
import { act, ask } from '../../state/call.ts';
import { t } from '../../words/t.ts';
import { cellSaver } from '../customers/field-saver.ts';

type Car = OutputOf<'car.get'>;
type Fields = Car['fields'];

interface CarCell {
  readonly key: keyof Fields;
  readonly words: Parameters<typeof t>[0];
  readonly take: (text: string, fields: Fields) => Fields | string;
}

const CELLS: readonly CarCell[] = [
  { key: 'words', words: 'cars.words', take: (words, fields) => ({ ...fields, words }) },
  { key: 'plate', words: 'cars.plate', take: (plate, fields) => ({ ...fields, plate }) },
  {
    key: 'year',
    words: 'cars.year',
    take: (text, fields) =>
      /^((19|20)\d\d)?$/.test(text.trim())
        ? { ...fields, year: text.trim() === '' ? null : Number(text) }
        : t('intake.yearWrong'),
  },
  {
    key: 'vin',
    words: 'cars.vin',
    take: (vin, fields) =>
      readVin(vin).verdict === 'refuse_character' ? t('intake.vinCharacter') : { ...fields, vin: readVin(vin).vin },
  },
  { key: 'axleCode', words: 'cars.axle', take: (axleCode, fields) => ({ ...fields, axleCode }) },
  { key: 'note', words: 'cars.note', take: (note, fields) => ({ ...fields, note }) },
];

/** What the car is, each cell saved on leaving it. */
export function CarFields({ car }: { readonly car: Car }) {
  const how = {
    row: car,
    send: ({ revision, fields }: { readonly revision: number; readonly fields: Fields }) =>
      act('car.change', { id: car.id, revision, change: fields }),
    read: () => ask('car.get', { id: car.id }),
  };
  return (
    <dl className="list-fields">
      {CELLS.map(({ key, words, take }) => {
        const show = (fields: Fields) => String(fields[key] ?? '');
        return (
          <div key={key}>
            <dt>{t(words)}</dt>
            <dd>
              <Cell label={t(words)} value={show(car.fields)} save={cellSaver({ show, take }, how)} />
            </dd>
          </div>
        );
      })}
    </dl>
  );
}
