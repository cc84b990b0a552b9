import type { z } from 'zod';
import type { Tax, TaxesByKind } from '../../core/money/line.ts';
import { LINE_KINDS, type LineKind } from '../../core/money/line.ts';
import { type Money, money } from '../../core/money/money.ts';

/** Takes a scenario's inputs and answers what the program's functions make of them, under the names of `expected`. */
export type Case = (inputs: unknown) => unknown | Promise<unknown>;

/** A case with its inputs checked first: a key that the adapter does not know fails instead of being passed over. */
export function mapped<S extends z.ZodType>(schema: S, work: (inputs: z.output<S>) => unknown): Case {
  return (inputs) => work(schema.parse(inputs));
}

/** Basis points as the program's millionths. */
export const tax = (bp: number, id = 'tax'): Tax => ({ id, name: id, ratePpm: bp * 100 });

/** One tax on every kind of line, or on the kinds named. */
export function taxed(bp: number, kinds: readonly LineKind[] = LINE_KINDS): TaxesByKind {
  return Object.fromEntries(kinds.map((kind) => [kind, [tax(bp)]]));
}

/** The cases say sublet where the program says outside. */
export const kindOf = (kind: string): LineKind => {
  const found = LINE_KINDS.find((one) => one === (kind === 'sublet' ? 'outside' : kind));
  if (found === undefined) throw new Error(`Unknown kind of line: ${kind}`);
  return found;
};

export const monies = (amounts: readonly number[]): Money[] => amounts.map(money);
