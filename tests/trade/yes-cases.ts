import { z } from 'zod';
import type { MoneyRules, Sheet, SheetJob, SheetLine } from '../../core/money/line.ts';
import { profitOf } from '../../core/money/margin.ts';
import { money, sum } from '../../core/money/money.ts';
import { priceAtSameMultiplier } from '../../core/money/pricing.ts';
import { type AllowanceRule, allowance, NO_ALLOWANCE } from '../../core/order/allowance.ts';
import { followUp } from '../../core/order/declined.ts';
import { billedHours } from '../../core/order/labour.ts';
import { yesAgainstSheet } from '../../core/order/yes.ts';
import { type Case, mapped, taxed } from './case.ts';
import { reckon } from './sheet-cases.ts';

const whole = z.int();

const rule = z.strictObject({
  mode: z.enum(['none', 'pct', 'lesser', 'greater']),
  pct_bp: whole.optional(),
  fixed: whole.optional(),
  cap: whole.nullable().optional(),
  edge: z.enum(['inside', 'outside']).optional(),
  base: z.enum(['gross', 'net']).optional(),
});

function ruleOf(given: z.output<typeof rule>, base: AllowanceRule['base'] = 'gross'): AllowanceRule {
  return {
    mode: given.mode,
    bp: given.pct_bp ?? 0,
    fixed: money(given.fixed ?? 0),
    cap: given.cap === undefined || given.cap === null ? null : money(given.cap),
    edge: given.edge ?? 'inside',
    base: given.base ?? base,
  };
}

export const yesCases: Readonly<Record<string, Case>> = {
  T07: mapped(
    z.strictObject({
      rate: whole,
      jobs: z.array(z.strictObject({ h_x100: whole, overlap_x100: whole, primary: z.boolean().optional() })),
    }),
    ({ rate, jobs }) => {
      const primary = jobs.findIndex((job) => job.primary === true);
      const booked = jobs.map((job, at) => ({
        jobId: String(at),
        bookHours: job.h_x100 * 10,
        overlapHours: job.overlap_x100 * 10,
        primaryJobId: at === primary ? null : String(primary),
      }));
      const ids = booked.map(({ jobId }) => jobId);
      const billed = booked.map((job) => billedHours(job, new Set(ids)));
      const others = booked.filter((_, at) => at !== primary);
      const without = others.map((job) => billedHours(job, new Set(others.map(({ jobId }) => jobId))));
      const priceOf = (quantity: number) => reckon([{ kind: 'labour', quantity, price: rate }], {}).net;
      const add = (hours: readonly number[]) => hours.reduce((a, b) => a + b, 0);
      return {
        billed_h_x100: billed.map((hours) => hours / 10),
        total_h_x100: add(billed) / 10,
        price: priceOf(add(billed)),
        separate_price: priceOf(add(booked.map(({ bookHours }) => bookHours))),
        without_primary_h_x100: add(without) / 10,
      };
    },
  ),
  T10: mapped(
    z.strictObject({ authorised: whole, revised: whole, rules: z.array(rule), base: z.enum(['gross', 'net']) }),
    ({ authorised, revised, rules, base }) => {
      const worked = rules.map((one) => allowance(ruleOf(one, base), money(authorised), money(revised)));
      return {
        excess: allowance(NO_ALLOWANCE, money(authorised), money(revised)).excess,
        allowed: worked.map(({ allowed }) => allowed),
        needs_authorisation: worked.map(({ mustAsk }) => mustAsk),
      };
    },
  ),
  T11: mapped(
    z.strictObject({
      authorised: whole,
      extra: z.strictObject({
        h_x100: whole,
        overlap_x100: whole,
        rate: whole,
        part: whole,
        supplies_bp: whole,
        tax_bp: whole,
      }),
      try_invoice: z.array(whole),
    }),
    ({ authorised, extra, try_invoice }) => {
      const job = { jobId: 'extra', bookHours: extra.h_x100 * 10, overlapHours: extra.overlap_x100 * 10 };
      const hours = billedHours({ ...job, primaryJobId: 'primary' }, new Set(['primary', 'extra']));
      const totals = reckon(
        [
          { kind: 'labour', quantity: hours, price: extra.rate },
          { kind: 'part', quantity: 1000, price: extra.part },
        ],
        {
          taxes: taxed(extra.tax_bp),
          supplies: { mode: 'percent', bp: extra.supplies_bp, cap: null, floor: null },
        },
      );
      const ceiling = sum([authorised, totals.gross]);
      return {
        extra_net: totals.net,
        extra_tax: totals.tax,
        extra_gross: totals.gross,
        authorised_total: ceiling,
        allowed: try_invoice.map((invoice) => !allowance(NO_ALLOWANCE, ceiling, money(invoice)).mustAsk),
      };
    },
  ),
  T12: mapped(
    z.strictObject({ declined_on: z.iso.date(), odo: whole, days: whole, distance: whole, amount: whole }),
    ({ declined_on, odo, days, distance, amount }) => {
      const pads: SheetLine = { id: 'pads', kind: 'part', quantity: 1000, unitPrice: money(amount), given: false };
      const job: SheetJob = { id: 'declined', lines: [pads], given: false };
      const sheet: Sheet = { jobs: [job], discounts: [], exempt: false };
      const rules: MoneyRules = {
        taxes: {},
        prices: 'exclusive',
        taxRounding: 'document',
        supplies: { mode: 'itemise' },
      };
      const no = { ceiling: null, jobs: [{ jobId: job.id, answer: 'no' as const }] };
      const follow = followUp(declined_on, odo, days, distance);
      return {
        invoiced: yesAgainstSheet(sheet, rules, [no], NO_ALLOWANCE).coveredTotal,
        follow_up_on: follow.on,
        follow_up_odo: follow.distance,
      };
    },
  ),
  T24: mapped(
    z.strictObject({ quoted_sell: whole, quoted_cost: whole, actual_cost: whole, rule, tax_bp: whole }),
    (inputs) => {
      const sell = money(inputs.quoted_sell);
      const fixed = profitOf(sell, money(inputs.actual_cost));
      const newSell = priceAtSameMultiplier(sell, money(inputs.quoted_cost), money(inputs.actual_cost));
      const withTax = (net: number) =>
        reckon([{ kind: 'part', quantity: 1000, price: net }], { taxes: taxed(inputs.tax_bp) });
      const drift = ruleOf(inputs.rule);
      const onBase = (net: number) => withTax(net)[drift.base];
      return {
        fixed_gp: fixed.profit,
        fixed_gp_pct_x10: fixed.marginX10,
        planned_gp_pct_x10: profitOf(sell, money(inputs.quoted_cost)).marginX10,
        new_sell: newSell,
        increase_net: newSell - sell,
        increase_gross: withTax(newSell - sell).gross,
        must_ask: allowance(drift, onBase(sell), onBase(newSell)).mustAsk,
      };
    },
  ),
};
