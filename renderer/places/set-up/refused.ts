import type { ShopError } from '../../../core/contract/errors.ts';
import { problemSentence } from '../../words/error-sentence.ts';
import { t } from '../../words/t.ts';
import { type Errors, type SetUpDraft, typedPeople, typedTaxes } from './draft.ts';

type Fields = Extract<ShopError, { code: 'bad-input' }>['fields'];

/** Fields of the settings that are typed under the same name on the page. */
const SAME = new Set(['name', 'address', 'phone', 'email', 'registration', 'taxNumber', 'zone', 'currency', 'notices']);

/** Under which name the page keeps the error of a path of the set-up; undefined where it has no field. */
function typedAt(path: string, draft: SetUpDraft): string | undefined {
  const [room, first = '', second = '', third = ''] = path.split('.');
  if (room === 'rates') return 'hour';
  if (room === 'people') {
    const person = typedPeople(draft)[Number(first)];
    return person === undefined ? 'people' : `${person.id} ${second || 'name'}`;
  }
  if (room !== 'settings') return undefined;
  if (first === 'taxes') {
    const tax = typedTaxes(draft)[Number(second)];
    return tax && `${tax.id} ${third === 'ratePpm' ? 'rate' : third}`;
  }
  return SAME.has(first) ? first : undefined;
}

/** What the shop refused, by the page's own fields; `elsewhere` are sentences for what has no field here. */
export function refusedAt(
  fields: Fields,
  draft: SetUpDraft,
): { readonly errors: Errors; readonly elsewhere: readonly string[] } {
  const errors: Record<string, string> = {};
  const elsewhere: string[] = [];
  for (const { path, problem, with: figures } of fields) {
    const at = typedAt(path, draft);
    const sentence = t('errors.bad-input-one', { problem: problemSentence(problem, figures) });
    if (at === undefined) elsewhere.push(`${path}: ${sentence}`);
    else errors[at] = sentence;
  }
  return { errors, elsewhere };
}
