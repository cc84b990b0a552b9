import type { z } from 'zod';
import type { seesRule } from './shop-terms.ts';

/** What of money somebody is shown: by their role (null: nobody signed in) and as the owner has set it (null: not yet). */
export function sightOf(
  role: 'owner' | 'desk' | 'mechanic' | null,
  sees: z.output<typeof seesRule> | null,
): { readonly seesPrices: boolean; readonly seesCost: boolean } {
  if (role === null) return { seesPrices: false, seesCost: false };
  if (role === 'owner') return { seesPrices: true, seesCost: true };
  if (role === 'desk') return { seesPrices: true, seesCost: sees?.deskCost ?? false };
  return { seesPrices: sees?.mechanicPrices ?? false, seesCost: sees?.mechanicCost ?? false };
}
