import type { CallError } from '../../state/transport.ts';
import { problemSentence } from '../../words/error-sentence.ts';
import { tMaybe } from '../../words/t.ts';

/** What the shop found wrong with one field, in the place's own words where it has them; null where that field is fine. */
export function problemAt(error: CallError | null, path: string, place: string): string | null {
  if (error?.code !== 'bad-input') return null;
  const field = error.fields.find((one) => one.path === path || one.path.startsWith(`${path}.`));
  if (field === undefined) return null;
  return tMaybe(`${place}.problem-${field.problem}`, field.with) ?? problemSentence(field.problem, field.with);
}
