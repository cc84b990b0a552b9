import { z } from 'zod';
import { shopSettings } from '../core/contract/shop.ts';
import type { Settings } from './context.ts';

/** What stands for a setting that a shop of an earlier program never heard of. */
const DEFAULTS = Object.fromEntries(
  Object.entries(shopSettings.shape).flatMap(([name, field]) =>
    field instanceof z.ZodDefault ? [[name, field.parse(undefined)]] : [],
  ),
);

/** The settings as they are kept, whole. */
export const readSettings = (kept: string): Settings => ({ ...DEFAULTS, ...(JSON.parse(kept) as Settings) });
