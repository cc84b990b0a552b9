import { t } from './t.ts';

/** 'A', 'A and B', 'A, B and C'. */
export function listWords(items: readonly string[]): string {
  if (items.length < 2) return items[0] ?? '';
  return `${items.slice(0, -1).join(', ')} ${t('parts.and')} ${items.at(-1)}`;
}
