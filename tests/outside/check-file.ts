import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Decimal } from 'decimal.js';
import type { z } from 'zod';
import { type Money, money } from '../../core/money/money.ts';

const chosen = process.env['CHECKS'];
const own = fileURLToPath(new URL('checks', import.meta.url));
const folder = chosen === undefined ? own : resolve(chosen);

if (!existsSync(folder)) throw new Error(`No such folder of checks: ${folder}`);
if (!readdirSync(own).some((name) => name.endsWith('.json') && existsSync(join(folder, name))))
  throw new Error(`No file of checks by a name that is known, in ${folder}`);

/** A set of published values, its shape checked; null when the chosen folder does not hold it. */
export function checkFile<S extends z.ZodType>(name: string, schema: S): z.output<S> | null {
  const path = join(folder, name);
  return existsSync(path) ? schema.parse(JSON.parse(readFileSync(path, 'utf8'))) : null;
}

/** A decimal string as minor units. Throws when it is finer than the minor unit. */
export function minor(text: string, digits = 2): Money {
  const value = new Decimal(text).times(new Decimal(10).pow(digits));
  if (!value.isInteger()) throw new RangeError(`Finer than the minor unit: ${text}`);
  return money(value.toNumber());
}

/** A percentage as a decimal string in millionths. */
export const ppm = (percent: string): number => new Decimal(percent).times(10_000).toNumber();
