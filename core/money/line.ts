import type { Money } from './money.ts';

/** Kinds of line, one word each everywhere: table, type, operation, screen and paper. */
export const LINE_KINDS = ['labour', 'part', 'fluid', 'outside', 'supplies', 'fee', 'core'] as const;
export type LineKind = (typeof LINE_KINDS)[number];

/** A tax of the shop. Rate in millionths (20 % = 200 000), so that 8.875 % and 9.975 % are exact. */
export interface Tax {
  readonly id: string;
  readonly name: string;
  readonly ratePpm: number;
}

/** Which taxes a kind of line bears. An absent kind is untaxed. */
export type TaxesByKind = Readonly<Partial<Record<LineKind, readonly Tax[]>>>;

/** A percentage in basis points (10 % = 1000) or a sum in minor units; never both. */
export type Reduction = { readonly bp: number } | { readonly sum: Money };

/** A line as far as money is concerned. Quantity in thousandths of its unit (hours, pieces, litres). */
export interface SheetLine {
  readonly id: string;
  readonly kind: LineKind;
  readonly quantity: number;
  readonly unitPrice: Money;
  /** Given away: recorded, shown at 0.00. */
  readonly given: boolean;
  readonly discount?: Reduction | undefined;
  /** The quantity is what was clocked, in minutes, brought to a step of so many thousandths of an hour. */
  readonly clocked?: { readonly minutes: number; readonly step: number; readonly way: 'nearest' | 'up' } | undefined;
  /** A rebuilt or reconditioned part: an old unit goes back for it. */
  readonly exchange?: boolean | undefined;
  /** Bears no tax whatever its kind: a credit whose tax stays where it was paid. */
  readonly untaxed?: boolean | undefined;
}

/** A job of the sheet. With a fixed price its lines are inside that price and are not added. */
export interface SheetJob {
  readonly id: string;
  readonly lines: readonly SheetLine[];
  readonly fixedPrice?: Money | undefined;
  /** Given away whole (also warranty, goodwill and internal jobs): every line at 0.00, no supplies on it. */
  readonly given: boolean;
}

/** What a share for supplies is a share of; parts are lines of kind part and fluid. */
export const SUPPLIES_BASES = ['labour', 'parts', 'both'] as const;
export type SuppliesBase = (typeof SUPPLIES_BASES)[number];

/** Shop supplies: a share of what is charged, with a cap and a floor, once a sheet; or itemised as typed lines only. */
export type SuppliesRule =
  | { readonly mode: 'itemise' }
  | {
      readonly mode: 'percent';
      /** Left out (papers from before it was there): labour. */
      readonly base?: SuppliesBase | undefined;
      readonly bp: number;
      readonly cap: Money | null;
      readonly floor: Money | null;
    };

/**
 * A fee once an order for getting rid of waste, of kind fee for its taxes. It stands where a job is charged and, at the
 * shop's choice, only where a charged job holds a part or a fluid. Whether it may be charged is local law.
 */
export interface WasteFee {
  readonly amount: Money;
  /** As sheet and papers call it. */
  readonly words: string;
  readonly when: 'charged' | 'part-or-fluid';
}

/**
 * How a charge on an old unit (kind core) is taxed, going out and coming back; what is right is local law.
 * refunded: taxed as its kind is, and the tax goes back with it. kept: taxed, and the tax stays when the charge goes back.
 * kept-on-new: the tax stays only where no rebuilt or reconditioned part of the job stands for the old unit.
 * none: no tax on the charge, either way.
 * share: no tax on the charge; the old unit itself is taxed, at a share of what the exchange parts of its job come to.
 */
export type CoreTax =
  | { readonly way: 'refunded' | 'kept' | 'kept-on-new' | 'none' }
  | { readonly way: 'share'; readonly bp: number };

/** A discount over the sheet, spread by value before tax over the lines that it names. */
export interface SheetDiscount {
  readonly on: 'labour' | 'parts' | 'all';
  readonly reduction: Reduction;
  readonly words: string;
}

export interface MoneyRules {
  readonly taxes: TaxesByKind;
  /** exclusive: prices before tax; inclusive: prices hold the tax. */
  readonly prices: 'exclusive' | 'inclusive';
  /** Where tax is rounded. */
  readonly taxRounding: 'document' | 'line';
  readonly supplies: SuppliesRule;
  /** null or left out (papers from before it was there): none. */
  readonly wasteFee?: WasteFee | null | undefined;
  /** Left out (papers from before it was there): refunded. */
  readonly coreTax?: CoreTax | undefined;
}

export interface Sheet {
  readonly jobs: readonly SheetJob[];
  readonly discounts: readonly SheetDiscount[];
  /** The customer is exempt from tax (certificate on the account). */
  readonly exempt: boolean;
}

/** One step of how a figure came about: what was done, on what, with which result. Words are looked up by `rule`. */
export interface ReckoningStep {
  readonly rule: string;
  readonly on: Readonly<Record<string, string | number>>;
  readonly result: number;
}

export interface LineTotal {
  readonly lineId: string;
  readonly jobId: string;
  readonly kind: LineKind;
  /** quantity x unit price less its own discount; 0 when given or inside a fixed price (then `spread` holds its share). */
  readonly amount: Money;
  /** The part of sheet discounts that falls on this line, as a positive amount. */
  readonly discountShare: Money;
  /** amount (or its share of a fixed price) less discountShare: what is taxed. */
  readonly base: Money;
  /** Tax of this line when taxes are rounded by line, else 0; without that on old units. */
  readonly tax: Money;
}

/** What stands on the sheet and on no line of it. */
export interface UnlinedTotal {
  /** fixed-price: of a job that has no line to carry its price. */
  readonly what: 'supplies' | 'waste-fee' | 'fixed-price';
  /** Only with a fixed price. */
  readonly jobId: string | null;
  readonly kind: LineKind;
  /** What is taxed: the sum less its part of the sheet's discounts. */
  readonly base: Money;
}

export interface TaxTotal {
  readonly tax: Tax;
  /** What the rate was applied to: net of tax in exclusive sheets, gross in inclusive ones. */
  readonly base: Money;
  readonly amount: Money;
  /** Tax on old units taken in exchange: `base` is their value, which nobody is charged, so the tax is always on top. */
  readonly oldUnits?: true;
}

export interface SheetTotals {
  readonly lines: readonly LineTotal[];
  readonly unlined: readonly UnlinedTotal[];
  /** By job id: what the job comes to before sheet discounts, in the sheet's prices (net or tax-inclusive). */
  readonly jobs: ReadonlyMap<string, Money>;
  /** By kind of line, after line discounts, before sheet discounts. What rules add is in `supplies` and `wasteFee`. */
  readonly byKind: Readonly<Record<LineKind, Money>>;
  /** Hours charged, in thousandths. */
  readonly labourHours: number;
  /** The supplies line that the rule adds, 0 if none. Bears the taxes of kind supplies. */
  readonly supplies: Money;
  /** The fee for waste that the rule adds, 0 if none. Bears the taxes of kind fee. */
  readonly wasteFee: Money;
  readonly discount: Money;
  readonly taxes: readonly TaxTotal[];
  /** What lines and rules come to less discounts, in the sheet's prices: the net, or (inclusive) the gross but for old units. */
  readonly prices: Money;
  readonly net: Money;
  readonly tax: Money;
  readonly gross: Money;
  readonly reckoning: readonly ReckoningStep[];
}
