import { LINE_KINDS, type LineKind, type MoneyRules, type SheetTotals, type TaxTotal } from './line.ts';
import { type Money, money, scale, sum } from './money.ts';
import { NOTHING_ADDED } from './shop-rules.ts';
import { reckonSheet } from './totals.ts';

/** A line of an issued paper of which something is or was credited; quantities in thousandths. */
export interface CreditedLine {
  readonly id: string;
  readonly kind: LineKind;
  /** What the line was taxed on when it was issued: its amount less all discounts. */
  readonly base: Money;
  readonly quantity: number;
  readonly creditedBefore: number;
  /** 0 for a line that only earlier notes credited: it has its part in the rounding of the tax. */
  readonly creditNow: number;
  /** The job it was billed in; left out (notes from before it was there): all in one. */
  readonly job?: string | undefined;
  readonly exchange?: boolean | undefined;
  readonly given?: boolean | undefined;
  /** Its tax stays where it was paid; `base` is then without tax, whatever the sheet's prices hold. */
  readonly taxStays?: boolean | undefined;
  /** Where the tax stays: the base as it was billed, which goes back when all of the paper does. */
  readonly billed?: Money | undefined;
  /** It stands on no line of the paper, or on one without a quantity: 1000 is all of it. */
  readonly unlined?: 'supplies' | 'waste-fee' | 'fixed-price' | undefined;
}

/** All of a paper is credited: whatever bears a sum is, and it was not for old units alone (those come back to a sale that stands). */
function allCredited(lines: readonly CreditedLine[], quantity: (line: CreditedLine) => number): boolean {
  const bearing = lines.filter((line) => line.base !== 0);
  return bearing.some(({ kind }) => kind !== 'core') && bearing.every((line) => quantity(line) >= line.quantity);
}

/** The part of a line's base that falls on so much of it. */
const baseOf = (line: CreditedLine, quantity: number): Money =>
  line.quantity === 0 ? money(0) : scale(line.base, quantity, line.quantity);

/**
 * The part of a line's base that falls on the quantity credited now. Worked from what is credited in all, so that
 * several credits of one line never come to more or less than the line.
 * Throws RangeError when more would be credited than was billed.
 */
export function creditedBase(line: CreditedLine): Money {
  const after = line.creditedBefore + line.creditNow;
  if (line.creditNow < 0 || after > line.quantity) throw new RangeError('More than was billed');
  return money(baseOf(line, after) - baseOf(line, line.creditedBefore));
}

/**
 * Totals of a credit note as positive sums, taxed by the rules of the paper that it corrects. Worked from what is
 * credited in all with it, less what was credited without it, tax too: so several notes of one paper add up to what one
 * note over all would be, and the last one takes the rest. The paper itself stays as issued.
 * Given all that the paper bills, the note that takes the last of it undoes the sale: what all notes come to is then the
 * paper to the last unit, with the tax on an old unit that stays while the sale does.
 * Throws RangeError when more would be credited than was billed.
 * @param lines every line of the paper that this note or an earlier one credits; with `all`, every row that it bills
 */
export function reckonCredit(
  lines: readonly CreditedLine[],
  rules: MoneyRules,
  exempt: boolean,
  all = false,
): SheetTotals {
  for (const line of lines) creditedBase(line);
  const upTo = (quantity: (line: CreditedLine) => number): SheetTotals => {
    const undone = all && allCredited(lines, quantity);
    const taken = undone ? lines : lines.filter((line) => quantity(line) > 0);
    const jobs = [...new Set(taken.map(jobOf))].map((id) => ({
      id,
      given: false,
      lines: taken
        .filter((line) => jobOf(line) === id)
        .map((line) => ({
          id: line.id,
          kind: line.kind,
          quantity: 1000,
          unitPrice: undone ? (line.billed ?? line.base) : baseOf(line, quantity(line)),
          given: line.given === true,
          exchange: line.exchange,
          untaxed: line.taxStays === true && !undone,
        })),
    }));
    return reckonSheet({ jobs, discounts: [], exempt }, { ...rules, ...NOTHING_ADDED });
  };
  const before = upTo((line) => line.creditedBefore);
  const after = upTo((line) => line.creditedBefore + line.creditNow);
  return less(after, before, new Map(lines.map((line) => [line.id, line])));
}

const jobOf = (line: CreditedLine): string => line.job ?? 'credit';

/** What the later totals add to the earlier ones, with the lines that are credited now. */
function less(after: SheetTotals, before: SheetTotals, credited: ReadonlyMap<string, CreditedLine>): SheetTotals {
  const minus = (a: Money, b: Money | undefined) => money(a - (b ?? 0));
  const earlier = new Map(before.lines.map((line) => [line.lineId, line]));
  const net = minus(after.net, before.net);
  const tax = minus(after.tax, before.tax);
  const gross = minus(after.gross, before.gross);
  const steps =
    before.lines.length === 0 ? [] : [{ rule: 'credited-before', on: { gross: before.gross }, result: gross }];
  const hours = [...credited.values()]
    .filter((line) => line.kind === 'labour' && line.unlined === undefined)
    .map((line) => line.creditNow);
  const added = (what: CreditedLine['unlined']) => {
    const ofRule = (totals: SheetTotals) =>
      sum(totals.lines.filter((line) => credited.get(line.lineId)?.unlined === what).map((line) => line.base));
    return minus(ofRule(after), ofRule(before));
  };
  const [supplies, wasteFee] = [added('supplies'), added('waste-fee')];
  const kinds = kindsLess(after, before);
  return {
    lines: after.lines
      .filter((line) => (credited.get(line.lineId)?.creditNow ?? 0) > 0)
      .map((line) => {
        const was = earlier.get(line.lineId);
        return {
          ...line,
          amount: minus(line.amount, was?.amount),
          base: minus(line.base, was?.base),
          tax: minus(line.tax, was?.tax),
        };
      }),
    jobs: new Map([...after.jobs].map(([id, amount]) => [id, minus(amount, before.jobs.get(id))])),
    unlined: [],
    byKind: { ...kinds, supplies: minus(kinds.supplies, supplies), fee: minus(kinds.fee, wasteFee) },
    labourHours: hours.reduce((all, each) => all + each, 0),
    supplies,
    wasteFee,
    discount: money(0),
    taxes: taxesLess(after.taxes, before.taxes),
    prices: minus(after.prices, before.prices),
    net,
    tax,
    gross,
    reckoning: [...after.reckoning, ...steps],
  };
}

const kindsLess = (after: SheetTotals, before: SheetTotals) =>
  Object.fromEntries(LINE_KINDS.map((kind) => [kind, money(after.byKind[kind] - before.byKind[kind])])) as Record<
    LineKind,
    Money
  >;

function taxesLess(after: readonly TaxTotal[], before: readonly TaxTotal[]): TaxTotal[] {
  return after
    .map((total) => {
      const was = before.find(
        ({ tax, oldUnits }) =>
          tax.id === total.tax.id && tax.ratePpm === total.tax.ratePpm && oldUnits === total.oldUnits,
      );
      return { ...total, base: money(total.base - (was?.base ?? 0)), amount: money(total.amount - (was?.amount ?? 0)) };
    })
    .filter((total) => total.base !== 0 || total.amount !== 0);
}
