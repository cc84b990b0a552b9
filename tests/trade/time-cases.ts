import { z } from 'zod';
import {
  bayMinutes,
  type ClockEntry,
  clockedPrice,
  efficiencyX10,
  hoursX1000,
  manMinutes,
  payCost,
} from '../../core/bench/clock.ts';
import { profitOf } from '../../core/money/margin.ts';
import { money } from '../../core/money/money.ts';
import { minutesBetween, minutesByDay, wallToInstant } from '../../core/time/instant.ts';
import { type Case, mapped } from './case.ts';
import { reckon } from './sheet-cases.ts';

const whole = z.int();
const clock = z.string().regex(/^\d\d:\d\d$/);
const wall = z.string().regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d$/);
const fold = z.literal([0, 1]);

/** Where a case names no zone and no day. */
const at = (time: string) => wallToInstant(`2026-03-10T${time}`, 'UTC');

const span = (zone: string, on: string, off: string, onFold: 0 | 1 = 0, offFold: 0 | 1 = 0) =>
  [wallToInstant(on, zone, onFold), wallToInstant(off, zone, offFold)] as const;

const work = (personId: string, jobId: string, on: number, off: number | null): ClockEntry => ({
  personId,
  jobId,
  kind: 'work',
  on,
  off,
});

export const timeCases: Readonly<Record<string, Case>> = {
  T06: mapped(
    z.strictObject({
      book_hours_x100: whole,
      rate: whole,
      clocked: z.array(z.strictObject({ min: whole, pay_rate: whole })),
    }),
    ({ book_hours_x100, rate, clocked }) => {
      const book = book_hours_x100 * 10;
      const minutes = clocked.reduce((all, { min }) => all + min, 0);
      const sell = reckon([{ kind: 'labour', quantity: book, price: rate }], {}).net;
      const cost = payCost(clocked.map(({ min, pay_rate }) => ({ minutes: min, payRate: money(pay_rate) })));
      const { profit, marginX10 } = profitOf(sell, cost);
      return {
        sell,
        clocked_min: minutes,
        time_and_materials_sell: clockedPrice(minutes, money(rate)),
        efficiency_pct_x10: efficiencyX10(book, minutes),
        pay_cost: cost,
        gp: profit,
        gp_pct_x10: marginX10,
      };
    },
  ),
  T17: mapped(z.strictObject({ spans: z.array(z.tuple([clock, clock])) }), ({ spans }) => {
    const entries = spans.map(([on, off]) => work('A', 'job', at(on), at(off)));
    const minutes = manMinutes(entries).get('job') ?? 0;
    return {
      minutes,
      hours_x100: Math.round(hoursX1000(minutes) / 10),
      hours_x10: Math.round(hoursX1000(minutes) / 100),
    };
  }),
  T18: mapped(z.strictObject({ zone: z.string(), on: wall, off: wall }), ({ zone, on, off }) => {
    const [from, to] = span(zone, on, off);
    return { minutes: minutesBetween(from, to), by_day: Object.fromEntries(minutesByDay(from, to, zone)) };
  }),
  T19: mapped(z.strictObject({ zone: z.string(), on: wall, off: wall }), ({ zone, on, off }) => ({
    minutes: minutesBetween(...span(zone, on, off)),
  })),
  T20: mapped(
    z.strictObject({
      zone: z.string(),
      a: z.strictObject({ on: wall, off: wall, on_fold: fold.optional(), off_fold: fold.optional() }),
      b: z.strictObject({ on: wall, off: wall, on_fold: fold.optional(), off_fold: fold.optional() }),
    }),
    ({ zone, a, b }) => {
      const minutes = (s: typeof a) => minutesBetween(...span(zone, s.on, s.off, s.on_fold, s.off_fold));
      return { a_minutes: minutes(a), b_minutes: minutes(b) };
    },
  ),
  T22: mapped(z.strictObject({ entries: z.array(z.tuple([z.string(), whole, clock, clock])) }), ({ entries }) => {
    const worked = entries.map(([person, job, on, off]) => work(person, String(job), at(on), at(off)));
    return { man_min: Object.fromEntries(manMinutes(worked)), bay_min: Object.fromEntries(bayMinutes(worked)) };
  }),
};
