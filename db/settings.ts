import { z } from 'zod';
import { shopSettings } from '../core/contract/shop.ts';
import type { Settings } from './context.ts';

/** What stands for a setting that a shop of an earlier program never heard of. */
const DEFAULTS = Object.fromEntries(
  Object.entries(shopSettings.shape).flatMap(([name, field]) =>
    field instanceof z.ZodDefault ? [[name, field.parse(undefined)]] : [],
  ),
);

/** So that what is read once and handed to many cannot be changed by one of them. */
function frozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null) {
    for (const inside of Object.values(value)) frozen(inside);
    Object.freeze(value);
  }
  return value;
}

/** The last text that was read and what it says: every operation reads the same one. */
let last: { readonly kept: string; readonly settings: Settings } | null = null;

/** The settings as they are kept, whole. Read-only, inside too. */
export function readSettings(kept: string): Settings {
  if (last?.kept === kept) return last.settings;
  const settings = frozen({ ...DEFAULTS, ...(JSON.parse(kept) as Settings) });
  last = { kept, settings };
  return settings;
}
