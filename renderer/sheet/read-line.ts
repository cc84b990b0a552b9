import { type Marks, parseQuantity } from '../../core/measure/quantity.ts';
import type { Line } from './order.ts';

export interface ReadQuantity {
  /** Thousandths. */
  readonly quantity: number;
  readonly unit: string;
}

/** "6.2 h" is 6200 and 'h'; "1.1 L" is 1100 and 'L'; "12" is 12000 without a unit. Null where it is no figure, or one of two. */
export function readQuantity(text: string, marks: Marks): ReadQuantity | null {
  const match = /^([\d.,]+)\s*(\p{L}{0,8})$/u.exec(text.trim());
  const quantity = match === null ? null : parseQuantity(match[1] ?? '', marks);
  if (match === null || quantity === null || quantity < 0) return null;
  const unit = match[2] ?? '';
  return { quantity, unit: unit === 'l' ? 'L' : unit };
}

/** What a line probably is, from its unit: hours are labour, litres are fluid, the rest is a part. */
export function guessKind(unit: string): Line['kind'] {
  if (unit === 'h' || unit === 'H') return 'labour';
  return unit === 'L' || unit === 'qt' ? 'fluid' : 'part';
}

/** A quantity at the end of plain words, "Remove and fit 6.2 h": the words before it and the quantity, or null. */
export function splitWords(text: string): { readonly words: string; readonly typed: string } | null {
  const match = /^(.*\S)\s+([\d.,]+\s*(?:h|H|L|l|qt))$/u.exec(text.trim());
  return match?.[1] === undefined || match[2] === undefined ? null : { words: match[1], typed: match[2] };
}
