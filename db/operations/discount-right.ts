import type { z } from 'zod';
import type { lineFields } from '../../core/contract/whole-order.ts';
import { reduction } from '../../core/money/bearer.ts';
import { type Discounted, discountRight } from '../../core/money/discount-limit.ts';
import type { LineKind, Reduction, SheetDiscount } from '../../core/money/line.ts';
import { money, scale, sum } from '../../core/money/money.ts';
import type { Context } from '../context.ts';
import { type Loaded, loadOrder } from '../order/load.ts';
import { type Reckoned, reckonOrder } from '../order/reckon.ts';
import { settingsOf } from '../people.ts';
import { held } from '../refusal.ts';
import type { LineRow } from '../tables.ts';

type LineFields = z.output<typeof lineFields>;

const NAMED: Readonly<Record<SheetDiscount['on'], (kind: LineKind) => boolean>> = {
  labour: (kind) => kind === 'labour',
  parts: (kind) => kind === 'part' || kind === 'fluid',
  all: () => true,
};

/** What a line would cost, what its own discount takes off, and its share of the sheet's. Gifts and fixed prices are no discounts. */
function ofLine(loaded: Loaded, reckoned: Reckoned, line: LineRow) {
  const job = loaded.jobs.find((one) => one.id === line.job_id);
  const total = reckoned.totals.lines.find((one) => one.lineId === line.id);
  const share = total?.discountShare ?? 0;
  if (!job || job.given === 1 || job.kind !== 'charged' || line.given === 1) return { full: 0, own: 0, share };
  if (job.fixed_price !== null) return { full: (total?.base ?? 0) + share, own: 0, share };
  const full = scale(reckoned.charged(line), line.unit_price, 1000);
  const own = line.discount === null ? 0 : reduction(JSON.parse(line.discount) as Reduction, full);
  return { full, own, share };
}

/** Throws held when the discounts of these lines are beyond what the person who asks may give. The owner may all. */
function mustFit(context: Context, lines: Discounted): void {
  const limit = settingsOf(context).deskDiscount;
  if (context.who?.role === 'owner') return;
  const right = discountRight(lines, limit);
  if (!right.inside) throw held([{ what: 'discount-over-limit', with: { percent: limit / 100, fits: right.fits } }]);
}

/** Holds a discount of the sheet that was just written, beyond what the person who gives it may. */
export async function sheetDiscountFits(context: Context, orderId: string, on: SheetDiscount['on']): Promise<void> {
  const settings = settingsOf(context);
  const loaded = await loadOrder(context, orderId);
  const reckoned = reckonOrder(loaded, settings);
  const { totals } = reckoned;
  const rows = loaded.lines
    .filter((line) => reckoned.onSheet.has(line.job_id) && NAMED[on](line.kind))
    .map((line) => ofLine(loaded, reckoned, line));
  const own = sum(rows.map((row) => row.own));
  // Over the whole sheet, what no line carries (supplies and the fee for waste) bears its part too.
  const prices = money(totals.prices + totals.discount);
  const [full, shares] =
    on === 'all'
      ? [money(prices + own), totals.discount]
      : [sum(rows.map((row) => row.full)), sum(rows.map((row) => row.share))];
  const asked = totals.reckoning.findLast((step) => step.rule === 'sheet-discount')?.result ?? 0;
  mustFit(context, { full, off: money(own + shares), asked: money(asked) });
}

/** Holds the discounts of lines that were just written, beyond what the person who gives them may. */
export async function lineDiscountsFit(context: Context, orderId: string, lineIds: readonly string[]): Promise<void> {
  const loaded = await loadOrder(context, orderId);
  const reckoned = reckonOrder(loaded, settingsOf(context));
  for (const line of loaded.lines.filter((one) => lineIds.includes(one.id))) {
    const { full, own, share } = ofLine(loaded, reckoned, line);
    if (own > 0) mustFit(context, { full: money(full), off: money(own + share), asked: money(own) });
  }
}

/**
 * Whether a change of a line gives more away: another discount, or a sum off less work. A discount that the owner gave is
 * no reason to hold a line that is only called something else.
 */
export function givesAway(was: LineFields, is: LineFields): boolean {
  if (is.discount === null) return false;
  if (JSON.stringify(was.discount) !== JSON.stringify(is.discount)) return true;
  const worth = (fields: LineFields) => [
    fields.quantity,
    fields.unitPrice,
    fields.billing,
    fields.book,
    fields.overlap,
  ];
  return 'sum' in is.discount && worth(was).some((figure, at) => figure !== worth(is)[at]);
}
