import { z } from 'zod';
import { payCost } from '../../core/bench/clock.ts';
import { dueOn, expectedDistance } from '../../core/car/due.ts';
import { checkReading, MOST_KM_A_DAY, perDayX100, type Reading, trueDistance } from '../../core/car/odometer.ts';
import { readVin } from '../../core/car/vin.ts';
import { covered } from '../../core/car/warranty.ts';
import { wrenchSetting } from '../../core/measure/torque-wrench.ts';
import { convert } from '../../core/measure/unit.ts';
import { money, sum } from '../../core/money/money.ts';
import { storageDays } from '../../core/order/storage.ts';
import { daysBetween } from '../../core/time/civil.ts';
import { type Case, mapped, taxed } from './case.ts';
import { givenJob, reckon } from './sheet-cases.ts';

const whole = z.int();
const date = z.iso.date();
const visit = z.tuple([date, whole]);
const reading = ([on, distance]: z.output<typeof visit>): Reading => ({ on, distance });
const tenths = (value: number) => Math.round(value * 10);

export const carCases: Readonly<Record<string, Case>> = {
  T27: mapped(
    z.strictObject({ target_nm: whole, wrench_mm: whole, extension_mm: whole, angles_deg: z.array(whole) }),
    ({ target_nm, wrench_mm, extension_mm, angles_deg }) => ({
      setting_nm_x10: angles_deg.map((angle) => tenths(wrenchSetting(target_nm, wrench_mm, extension_mm, angle))),
      target_lbft_x10: tenths(convert('torque', target_nm, 'N·m', 'lbf·ft')),
    }),
  ),
  T29: mapped(
    z.strictObject({ v: z.tuple([visit, visit]), due_odo: whole, due_date: date, ask_on: date }),
    ({ v, due_odo, due_date, ask_on }) => {
      const [first, last] = [reading(v[0]), reading(v[1])];
      const due = dueOn(first, last, { atDistance: due_odo, onDate: due_date }, MOST_KM_A_DAY);
      return {
        days: due.days,
        per_day_x100: due.perDayX100,
        days_to_due: due.daysToDue,
        due_on: due.on,
        predicted: expectedDistance(first, last, ask_on),
      };
    },
  ),
  T30: mapped(
    z.strictObject({ replaced_on: date, old_final: whole, new_start: whole, later: visit }),
    ({ replaced_on, old_final, new_start, later }) => {
      const shown = reading(later);
      const distance = trueDistance(shown, [{ on: replaced_on, oldFinal: old_final, newStart: new_start }]);
      const before: Reading = { on: replaced_on, distance: old_final };
      return {
        true_odo: distance,
        days: daysBetween(replaced_on, shown.on),
        per_day_x100: perDayX100(before, { on: shown.on, distance }),
      };
    },
  ),
  T31: mapped(
    z.strictObject({ last_km: whole, typed: whole, last_on: date, today: date, max_km_per_day: whole }),
    ({ last_km, typed, last_on, today, max_km_per_day }) => {
      const last: Reading = { on: last_on, distance: last_km };
      const check = checkReading(last, { on: today, distance: typed }, 'km', max_km_per_day);
      return { lower: check.lower, as_miles_km: check.otherUnit, plausible_as_miles: check.fitsAsOtherUnit };
    },
  ),
  T35: mapped(
    z.strictObject({
      on: date,
      odo: whole,
      months: whole,
      distance: whole,
      edges_included: z.boolean(),
      returns: z.array(visit),
      min: whole,
      pay_rate: whole,
      part_cost: whole,
    }),
    (inputs) => {
      const repair: Reading = { on: inputs.on, distance: inputs.odo };
      const terms = { months: inputs.months, distance: inputs.distance, edgesIncluded: inputs.edges_included };
      const pay = payCost([{ minutes: inputs.min, payRate: money(inputs.pay_rate) }]);
      return {
        covered: inputs.returns.map((back) => covered(repair, terms, reading(back))),
        internal_cost: sum([pay, inputs.part_cost]),
        customer_pays: givenJob(inputs.part_cost, 2000),
      };
    },
  ),
  T39: mapped(
    z.strictObject({
      notice: date,
      free_working_days: whole,
      working_weekdays: z.array(whole),
      collection_day_charged: z.boolean(),
      rate: whole,
      collected: date,
      tax_bp: whole,
    }),
    (inputs) => {
      const { firstCharged, days } = storageDays(inputs.notice, inputs.collected, {
        freeWorkingDays: inputs.free_working_days,
        workingWeekdays: inputs.working_weekdays,
        collectionDayCharged: inputs.collection_day_charged,
      });
      const totals = reckon([{ kind: 'fee', quantity: days * 1000, price: inputs.rate }], {
        taxes: taxed(inputs.tax_bp),
      });
      return { first_charged: firstCharged, days, net: totals.net, tax: totals.tax, gross: totals.gross };
    },
  ),
  T40: mapped(z.strictObject({ vins: z.array(z.string()) }), ({ vins }) => {
    const read = vins.map(readVin);
    return { check: read[0]?.expectedCheckDigit, results: read.map(({ verdict }) => verdict) };
  }),
};
