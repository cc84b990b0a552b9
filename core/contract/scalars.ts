import { z } from 'zod';
import { LINE_KINDS } from '../money/line.ts';
import { MOST } from '../money/most.ts';

/** Signs that turn the direction of what follows (Unicode bidi embeddings, overrides and isolates): words would lie. */
const TURNS = /[\u202a-\u202e\u2066-\u2069]/;
/** Words without control characters, trimmed, of a bounded length: nobody types ten megabytes into a sheet. */
export const words = (most: number) =>
  z
    .string()
    .trim()
    .max(most)
    .refine((text) => text.isWellFormed(), { error: 'broken-character' })
    .refine((text) => !/[^\P{Cc}\n\t]/u.test(text) && !TURNS.test(text), { error: 'control-character' });
/** A plate: letters and digits of any script, with the signs that stand between them. */
export const plate = words(16).refine((text) => /^[\p{L}\p{M}\p{N} .·•/-]*$/u.test(text), { error: 'not-a-plate' });
export const needed = (most: number) => words(most).min(1);

export const id = z.string().min(1).max(64);
/** An id made outside the shop: a UUIDv7 (RFC 9562). */
export const madeId = z.uuidv7();
export const revision = z.int().min(1);
/** Minor units: whatever adds up, so wider than what may be typed. */
export const amount = z.int();
/** Minor units, never below zero: what somebody types as a price. */
export const price = z.int().min(0).max(MOST);
/** Thousandths of an hour, piece or litre. */
export const quantity = z.int().min(0).max(1_000_000_000);
/** Basis points of a percentage, 0 to 100 %. */
export const basisPoints = z.int().min(0).max(10_000);
/** Millionths: 20 % = 200 000. */
export const ratePpm = z.int().min(0).max(1_000_000);
/** Epoch milliseconds between 1990 and 2200. */
export const instant = z.int().min(631_152_000_000).max(7_258_118_400_000);
/** A civil date between 1900 and 2199 that exists. */
export const civilDate = z.iso
  .date()
  .refine((day) => day >= '1900-01-01' && day < '2200-01-01', { error: 'out-of-range' });
/** Mileage in whole units of the car's own clock. */
export const mileage = z.int().min(0).max(9_999_999);
export const distanceUnit = z.enum(['km', 'mi']);
export const lineKind = z.enum(LINE_KINDS);
export const condition = z.enum(['new', 'used', 'rebuilt', 'reconditioned']);
export const reduction = z.union([z.strictObject({ bp: basisPoints }), z.strictObject({ sum: price })]);
export const role = z.enum(['owner', 'desk', 'mechanic']);
export const done = z.strictObject({ id, revision });
/** null where the person asking may not see prices (or cost). */
export const seenAmount = amount.nullable();
/** Strokes of a signature: polylines of x, y in thousandths of the pad. */
export const strokes = z.array(z.array(z.tuple([z.int(), z.int()])).max(2000)).max(200);

type Bare<F> = F extends z.ZodDefault<infer Inner> ? Inner : F;

/**
 * The change schema of some fields: each may be left out, and what is left out stays as it is. Not `.partial()`, which
 * keeps the defaults and would quietly reset every field that a change does not name.
 */
export function changeOf<S extends z.ZodRawShape>(fields: z.ZodObject<S>) {
  const bare = Object.entries(fields.shape).map(([key, field]) => [
    key,
    (field instanceof z.ZodDefault ? field.unwrap() : field) as z.ZodType,
  ]);
  return z.strictObject(Object.fromEntries(bare) as { [K in keyof S]: Bare<S[K]> }).partial();
}
