import { sightOf } from '../../../core/contract/sight.ts';
import { t } from '../../words/t.ts';
import type { Settings } from './setting.tsx';

export const ROLES = ['owner', 'desk', 'mechanic'] as const;
/** The roles to pick from. */
export const roleOptions = () => ROLES.map((value) => ({ value, words: t(`start.${value}`) }));
export const readRole = (text: string) => ROLES.find((role) => role === text) ?? 'mechanic';

/** In a word what of money a role is shown here. */
export function seenBy(role: (typeof ROLES)[number], { sees }: Pick<Settings, 'sees'>) {
  const { seesPrices, seesCost } = sightOf(role, sees);
  if (seesPrices) return seesCost ? 'both' : 'prices';
  return seesCost ? 'cost' : 'neither';
}
