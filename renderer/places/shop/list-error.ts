import type { CallError } from '../../state/transport.ts';
import { tMaybe } from '../../words/t.ts';

/** What the shop found wrong with a list, in the words of this place; null where the program's own do. */
export function saidOfList(error: CallError): string | null {
  if (error.code === 'not-allowed') return tMaybe(`shop.not-allowed-${error.why}`);
  if (error.code !== 'bad-input') return null;
  const [field] = error.fields;
  return field === undefined ? null : tMaybe(`shop.problem-${field.problem}`);
}
