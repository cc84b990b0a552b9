import { percentX10 } from '../money/margin.ts';
import { type Money, roundDivide } from '../money/money.ts';

/** Hours in thousandths, sums in minor units before tax. Warranty and internal hours are clocked, not billed. */
export interface LabourWeek {
  readonly present: number;
  readonly clocked: number;
  readonly billed: number;
  readonly sold: Money;
  readonly postedRate: Money;
}

/** Percentages times ten, rates in minor units an hour; null where there is nothing to divide by. */
export interface LabourNumbers {
  /** Clocked on jobs / present. */
  readonly utilisationX10: number | null;
  /** Billed / clocked. */
  readonly efficiencyX10: number | null;
  /** Billed / present. */
  readonly productivityX10: number | null;
  /** Labour sold / billed hours. */
  readonly effectiveRate: Money | null;
  readonly effectiveX10: number | null;
  readonly perPresentHour: Money | null;
}

/** A week's labour. The trade's words differ, so each figure is shown with its formula. Common practice, no source. */
export function labourNumbers(week: LabourWeek): LabourNumbers {
  return {
    utilisationX10: percentX10(week.clocked, week.present),
    efficiencyX10: percentX10(week.billed, week.clocked),
    productivityX10: percentX10(week.billed, week.present),
    effectiveRate: anHour(week.sold, week.billed),
    effectiveX10: percentX10(week.sold * 1000, week.billed * week.postedRate),
    perPresentHour: anHour(week.sold, week.present),
  };
}

function anHour(sold: Money, hours: number): Money | null {
  return hours === 0 ? null : roundDivide(BigInt(sold) * 1000n, BigInt(hours));
}

export interface StockTurns {
  /** Cost of what was sold / average of opening and closing stock, times ten; null without stock. */
  readonly turnsX10: number | null;
  /** Days of a year that the stock lasts; null when nothing was sold. */
  readonly days: number | null;
}

/** How often a year's stock turned over. Sums in minor units at cost. */
export function stockTurns(costOfSales: Money, opening: Money, closing: Money): StockTurns {
  const twice = BigInt(opening) + BigInt(closing);
  const cost = BigInt(costOfSales);
  return {
    turnsX10: twice === 0n ? null : roundDivide(cost * 20n, twice),
    days: cost === 0n ? null : roundDivide(365n * twice, 2n * cost),
  };
}

/** Net sales by invoice, minor units; null when there was none. */
export function averageInvoice(net: Money, invoices: number): Money | null {
  return invoices === 0 ? null : roundDivide(BigInt(net), BigInt(invoices));
}
