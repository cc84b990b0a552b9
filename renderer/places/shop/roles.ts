import { t } from '../../words/t.ts';

export const ROLES = ['owner', 'desk', 'mechanic'] as const;
/** The roles to pick from. */
export const roleOptions = () => ROLES.map((value) => ({ value, words: t(`start.${value}`) }));
export const readRole = (text: string) => ROLES.find((role) => role === text) ?? 'mechanic';
