import { z } from 'zod';
import { ageing } from '../../core/books/ageing.ts';
import { closeDrawer } from '../../core/books/drawer.ts';
import { exposureOf, poMissing } from '../../core/books/exposure.ts';
import { averageInvoice, labourNumbers, stockTurns } from '../../core/books/numbers.ts';
import { trend } from '../../core/fluid/trend.ts';
import { profitOf } from '../../core/money/margin.ts';
import { money } from '../../core/money/money.ts';
import { type Case, mapped } from './case.ts';

const whole = z.int();
const sample = z.tuple([z.number(), z.number()]).transform(([ppm, km]) => ({ ppm, km }));
const times = (value: number | null, by: number) => (value === null ? null : Math.round(value * by));

export const booksCases: Readonly<Record<string, Case>> = {
  T32: mapped(
    z.strictObject({
      history: z.array(sample),
      new: sample,
      alert_sd: z.number(),
      alarm_sd: z.number(),
      sd_kind: z.enum(['sample', 'population']),
      statuses: z.array(z.string()),
      min_samples: whole,
      min_km: whole,
    }),
    (inputs) => {
      const told = trend(inputs.history, inputs.new, {
        alertSd: inputs.alert_sd,
        alarmSd: inputs.alarm_sd,
        sd: inputs.sd_kind,
        fewestSamples: inputs.min_samples,
        fewestKm: inputs.min_km,
      });
      return {
        rates_x10: told.rates.map((rate) => times(rate, 10)),
        mean_x1000: times(told.mean, 1000),
        sd_x1000: times(told.deviation, 1000),
        alert_x100: times(told.alert, 100),
        alarm_x100: times(told.alarm, 100),
        new_x10: times(told.newRate, 10),
        status: told.says,
      };
    },
  ),
  T33: mapped(
    z.strictObject({
      as_of: z.iso.date(),
      items: z.array(z.tuple([z.iso.date(), whole])),
      unapplied: whole,
      bucket_upper_days: z.array(whole),
    }),
    ({ as_of, items, unapplied, bucket_upper_days }) =>
      ageing(
        items.map(([dueOn, open]) => ({ dueOn, open: money(open) })),
        money(unapplied),
        as_of,
        bucket_upper_days,
      ),
  ),
  T34: mapped(
    z.strictObject({ limit: whole, open: whole, wip: whole, new: whole, po_required: z.boolean(), po: z.string() }),
    (inputs) => {
      const debt = {
        openInvoices: money(inputs.open),
        authorised: money(inputs.wip),
        newJob: money(inputs.new),
      };
      const { exposure, over } = exposureOf(debt, money(inputs.limit));
      return { exposure, over, needs_owner: over > 0, may_invoice: !poMissing(inputs.po_required, inputs.po) };
    },
  ),
  T36: mapped(
    z.strictObject({ present_x10: whole, clocked_x10: whole, billed_x10: whole, labour_sales: whole, posted: whole }),
    (inputs) => {
      const numbers = labourNumbers({
        present: inputs.present_x10 * 100,
        clocked: inputs.clocked_x10 * 100,
        billed: inputs.billed_x10 * 100,
        sold: money(inputs.labour_sales),
        postedRate: money(inputs.posted),
      });
      return {
        utilisation_x10: numbers.utilisationX10,
        efficiency_x10: numbers.efficiencyX10,
        productivity_x10: numbers.productivityX10,
        effective_rate: numbers.effectiveRate,
        effective_pct_x10: numbers.effectiveX10,
        per_present_hour: numbers.perPresentHour,
      };
    },
  ),
  T37: mapped(
    z.strictObject({ sales: whole, cogs: whole, open: whole, close: whole, invoices: whole, net: whole }),
    (inputs) => {
      const { profit, marginX10, markupX10 } = profitOf(money(inputs.sales), money(inputs.cogs));
      const { turnsX10, days } = stockTurns(money(inputs.cogs), money(inputs.open), money(inputs.close));
      return {
        gp: profit,
        margin_x10: marginX10,
        markup_x10: markupX10,
        turns_x10: turnsX10,
        days,
        average_invoice: averageInvoice(money(inputs.net), inputs.invoices),
      };
    },
  ),
  T38: mapped(
    z.strictObject({
      float: whole,
      cash_in: whole,
      refunds: whole,
      paid_out: whole,
      drops: whole,
      counted: whole,
    }),
    (inputs) => {
      const day = {
        float: money(inputs.float),
        cashIn: money(inputs.cash_in),
        refunds: money(inputs.refunds),
        paidOut: money(inputs.paid_out),
        drops: money(inputs.drops),
      };
      return closeDrawer(day, money(inputs.counted));
    },
  ),
};
