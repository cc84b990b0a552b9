import type { ShopError } from '../../../core/contract/errors.ts';
import { problemSentence } from '../../words/error-sentence.ts';
import { t } from '../../words/t.ts';
import type { Draft, Errors } from './draft.ts';

type Fields = Extract<ShopError, { code: 'bad-input' }>['fields'];

/** Where each field of the booking is typed on the page. */
const TYPED_AT: Readonly<Record<string, keyof Draft>> = {
  'customer.add.name': 'name',
  'customer.add.phone': 'phone',
  'car.add.plate': 'plate',
  'car.add.vin': 'vin',
  'car.add.words': 'words',
  'car.add.year': 'year',
  complaint: 'complaint',
  mileage: 'mileage',
  'door.keys': 'keys',
  'door.marks': 'marks',
  'booking.day': 'hours',
  'booking.from': 'hours',
  'booking.hours': 'hours',
  promiseAt: 'promise',
  ownMaximum: 'ownMost',
};

/** What the shop refused, at the field where it was typed; `elsewhere` are sentences for what has no field here. */
export function refusedAt(fields: Fields): { readonly errors: Errors; readonly elsewhere: readonly string[] } {
  const errors: Errors = {};
  const elsewhere: string[] = [];
  for (const { path, problem, with: figures } of fields) {
    const at = TYPED_AT[path.replace(/\.\d+$/, '')];
    const sentence = t('errors.bad-input-one', { problem: problemSentence(problem, figures) });
    if (at === undefined) elsewhere.push(`${path}: ${sentence}`);
    else errors[at] = at === 'promise' ? t('intake.promiseWrong') : sentence;
  }
  return { errors, elsewhere };
}
