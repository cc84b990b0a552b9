import { z } from 'zod';
import { payCost } from '../../core/bench/clock.ts';
import { balancesAfter, profitOf } from '../../core/money/margin.ts';
import { money, sum } from '../../core/money/money.ts';
import { markedUp, markedUpGuarded } from '../../core/money/pricing.ts';
import { average, EMPTY, issue, type Stock, sendBack, takeIn } from '../../core/stock/average.ts';
import { coreCredit, coreLastDay } from '../../core/stock/core-credit.ts';
import { countDrum } from '../../core/stock/drum.ts';
import { reorder } from '../../core/stock/reorder.ts';
import { type Case, mapped, monies, taxed } from './case.ts';
import { reckon } from './sheet-cases.ts';

const whole = z.int();

const move = z.tuple([z.enum(['in', 'issue', 'supplier_return', 'customer_return']), whole, whole.nullable()]);

function after(stock: Stock, [kind, pieces, cost]: z.output<typeof move>): Stock {
  const quantity = pieces * 1000;
  const unitCost = money(cost ?? 0);
  if (kind === 'issue') return issue(stock, quantity, unitCost);
  return kind === 'supplier_return' ? sendBack(stock, quantity, unitCost) : takeIn(stock, quantity, unitCost);
}

export const stockCases: Readonly<Record<string, Case>> = {
  T14: mapped(
    z.strictObject({
      core_sell: whole,
      core_cost: whole,
      tax_bp: whole,
      grade_bp: whole,
      sold_on: z.iso.date(),
      window_days: whole,
      note: z.string().optional(),
    }),
    (inputs) => {
      const [sell, cost] = [money(inputs.core_sell), money(inputs.core_cost)];
      const full = coreCredit(sell, cost, 10_000, 10_000);
      const part = coreCredit(sell, cost, inputs.grade_bp, inputs.grade_bp);
      const credit = (price: number) =>
        reckon([{ kind: 'core', quantity: 1000, price }], { taxes: taxed(inputs.tax_bp, ['core']) });
      const [wholeCredit, partCredit] = [credit(full.credit), credit(part.credit)];
      return {
        full_net: wholeCredit.net,
        full_tax: wholeCredit.tax,
        full_gross: wholeCredit.gross,
        part_net: partCredit.net,
        part_tax: partCredit.tax,
        part_gross: partCredit.gross,
        supplier_credit: part.supplierCredit,
        shop_result: part.shopResult,
        last_day: coreLastDay(inputs.sold_on, inputs.window_days),
      };
    },
  ),
  T23: mapped(z.strictObject({ moves: z.array(move) }), ({ moves }) => {
    let stock = EMPTY;
    const states = moves.map((one) => {
      stock = after(stock, one);
      return stock;
    });
    return {
      qty: states.map(({ quantity }) => quantity / 1000),
      value: states.map(({ value }) => value),
      average: states.map(average),
    };
  }),
  T25: mapped(
    z.strictObject({ drum_ml: whole, drum_cost: whole, issues_ml: z.array(whole), dip_ml: whole }),
    ({ drum_ml, drum_cost, issues_ml, dip_ml }) => {
      const full: Stock = { quantity: drum_ml, value: money(drum_cost) };
      const book = issues_ml.reduce((stock, ml) => issue(stock, ml, money(0)), full);
      const issued = issues_ml.reduce((a, b) => a + b, 0);
      const counted = countDrum(book, issued, dip_ml, money(0));
      return {
        book_ml: book.quantity,
        variance_ml: counted.variance,
        variance_value: counted.varianceValue,
        variance_pct_x10: counted.varianceX10,
        value_after: counted.after.value,
      };
    },
  ),
  T26: mapped(
    z.strictObject({ tiers: z.array(z.tuple([whole.nullable(), whole])), costs: z.array(whole) }),
    ({ tiers, costs }) => {
      const bands = tiers.map(([upTo, bp]) => ({ upTo: upTo === null ? null : money(upTo), bp }));
      return {
        plain: monies(costs).map((cost) => markedUp(cost, bands)),
        guarded: monies(costs).map((cost) => markedUpGuarded(cost, bands)),
      };
    },
  ),
  T43: mapped(
    z.strictObject({
      on_hand: whole,
      reserved: whole,
      on_order: whole,
      keep_at_least: whole,
      keep_at_most: whole,
      pack: whole,
    }),
    (inputs) => {
      const { free, order } = reorder({
        onHand: inputs.on_hand * 1000,
        reserved: inputs.reserved * 1000,
        onOrder: inputs.on_order * 1000,
        keepAtLeast: inputs.keep_at_least * 1000,
        keepAtMost: inputs.keep_at_most * 1000,
        pack: inputs.pack * 1000,
      });
      return { free: free / 1000, order: order / 1000 };
    },
  ),
  T45: mapped(
    z.strictObject({
      quote_net_without_core: whole,
      extra_net: whole,
      tax_bp: whole,
      deposit: whole,
      part_costs: z.array(whole),
      pay_cost: whole,
      extra_min: whole,
      extra_pay_rate: whole,
      note: z.string().optional(),
    }),
    (inputs) => {
      const totals = reckon(
        [inputs.quote_net_without_core, inputs.extra_net].map((price) => ({ kind: 'labour', quantity: 1000, price })),
        { taxes: taxed(inputs.tax_bp) },
      );
      const pay = payCost([{ minutes: inputs.extra_min, payRate: money(inputs.extra_pay_rate) }]);
      const partsCost = sum(inputs.part_costs);
      const labourCost = sum([inputs.pay_cost, pay]);
      const cost = sum([partsCost, labourCost]);
      const { profit, marginX10 } = profitOf(totals.net, cost);
      return {
        net: totals.net,
        tax: totals.tax,
        gross: totals.gross,
        balance: balancesAfter(totals.gross, [money(inputs.deposit)])[0],
        parts_cost: partsCost,
        labour_cost: labourCost,
        cost,
        profit,
        profit_pct_x10: marginX10,
      };
    },
  ),
};
