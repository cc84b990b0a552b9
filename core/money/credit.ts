import type { LineKind, MoneyRules, SheetTotals } from './line.ts';
import { type Money, money, scale } from './money.ts';
import { reckonSheet } from './totals.ts';

/** A line of an issued paper of which something is credited; quantities in thousandths. */
export interface CreditedLine {
  readonly id: string;
  readonly kind: LineKind;
  /** What the line was taxed on when it was issued: its amount less all discounts. */
  readonly base: Money;
  readonly quantity: number;
  readonly creditedBefore: number;
  readonly creditNow: number;
}

/**
 * The part of a line's base that falls on the quantity credited now. Worked from what is credited in all, so that
 * several credits of one line never come to more or less than the line.
 * Throws RangeError when more would be credited than was billed.
 */
export function creditedBase(line: CreditedLine): Money {
  const after = line.creditedBefore + line.creditNow;
  if (line.creditNow < 0 || after > line.quantity) throw new RangeError('More than was billed');
  if (line.creditNow === line.quantity) return line.base;
  return money(scale(line.base, after, line.quantity) - scale(line.base, line.creditedBefore, line.quantity));
}

/**
 * Totals of a credit note as positive sums, taxed by the rules of the paper that it corrects. The paper itself stays as
 * issued: the pair nets to what is right.
 */
export function reckonCredit(lines: readonly CreditedLine[], rules: MoneyRules, exempt: boolean): SheetTotals {
  const sheetLines = lines.map((line) => ({
    id: line.id,
    kind: line.kind,
    quantity: 1000,
    unitPrice: creditedBase(line),
    given: false,
  }));
  const jobs = [{ id: 'credit', lines: sheetLines, given: false }];
  return reckonSheet({ jobs, discounts: [], exempt }, { ...rules, supplies: { mode: 'itemise' } });
}
