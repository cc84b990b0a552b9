import { z } from 'zod';
import { daysBetween } from '../../core/time/civil.ts';
import { at } from '../db/practice-shop.ts';
import type { Case } from './case.ts';
import { bookIn, ITEMISED, inShop, oneTax } from './played-shop.ts';

const whole = z.int();
const date = z.iso.date();
const visit = z.tuple([date, whole]);

/** Two visits, a reminder with a date and a distance, and what the list says of it on a day. */
const T29: Case = (given) => {
  const inputs = z
    .strictObject({ v: z.tuple([visit, visit]), due_odo: whole, due_date: date, ask_on: date })
    .parse(given);
  const [[firstOn, first], [lastOn, last]] = inputs.v;
  return inShop({}, async (garage) => {
    garage.now = at(`${firstOn}T08:00`);
    const { carId, customerId } = await bookIn(garage, first);
    garage.now = at(`${lastOn}T08:00`);
    const again = { customer: { id: customerId }, car: { id: carId }, complaint: 'Next visit.', here: true };
    await garage.did('Desk', 'order.book', { ...again, mileage: last });
    await garage.did('Desk', 'reminder.add', {
      ...{ carId, source: 'service', words: 'Gear oil', dueOn: inputs.due_date, dueMileage: inputs.due_odo },
    });
    garage.now = at(`${inputs.ask_on}T08:00`);
    const [row] = (await garage.did('Desk', 'reminder.list', { carId })).rows;
    return {
      days: row?.days,
      per_day_x100: row?.perDayX100,
      days_to_due: row?.on ? daysBetween(lastOn, row.on) : null,
      due_on: row?.on,
      predicted: row?.expected,
    };
  });
};

/** A clock replaced as an event, and a later visit without a doubt about the lower figure. */
const T30: Case = (given) => {
  const inputs = z.strictObject({ replaced_on: date, old_final: whole, new_start: whole, later: visit }).parse(given);
  const [on, shown] = inputs.later;
  return inShop({}, async (garage) => {
    garage.now = at(`${inputs.replaced_on}T08:00`);
    const { carId, customerId } = await bookIn(garage, inputs.old_final);
    await garage.did('Desk', 'car.odometer', {
      ...{ id: carId, reading: inputs.old_final, on: inputs.replaced_on },
      ...{ event: 'replaced', newStart: inputs.new_start },
    });
    garage.now = at(`${on}T08:00`);
    await garage.did('Desk', 'order.book', {
      ...{ customer: { id: customerId }, car: { id: carId }, complaint: 'Next visit.', mileage: shown, here: true },
    });
    const { readings } = await garage.did('Desk', 'car.get', { id: carId });
    await garage.did('Desk', 'reminder.add', { carId, words: 'Belt', dueMileage: shown + 10_000 });
    const [row] = (await garage.did('Desk', 'reminder.list', { carId })).rows;
    return { true_odo: readings.at(-1)?.trueDistance, days: row?.days, per_day_x100: row?.perDayX100 };
  });
};

/** Storage told at the door, a ready notice that went out, and what leaving the car comes to. */
const T39: Case = (given) => {
  const inputs = z
    .strictObject({
      ...{
        notice: date,
        free_working_days: whole,
        working_weekdays: z.array(whole),
        collection_day_charged: z.boolean(),
      },
      ...{ rate: whole, collected: date, tax_bp: whole },
    })
    .parse(given);
  const settings = {
    ...{ workingWeekdays: inputs.working_weekdays, storageOnCollectionDay: inputs.collection_day_charged },
    ...{ taxes: oneTax(inputs.tax_bp), supplies: ITEMISED },
  };
  return inShop(settings, async (garage) => {
    garage.now = at(`${inputs.notice}T08:00`);
    const { id, customerId } = await garage.did('Desk', 'order.book', {
      customer: { add: { name: 'Ilse Vandermeer' } },
      car: { add: { plate: 'KTB 4471', words: 'Corvane R', unit: 'km' } },
      ...{ complaint: 'As the case says.', here: true },
      door: { storageTold: true, storage: { perDay: inputs.rate, freeWorkingDays: inputs.free_working_days } },
    });
    await garage.did('Desk', 'message.record', {
      ...{ customerId, orderId: id, about: 'ready', way: 'message', reached: true, words: 'It is ready.' },
    });
    garage.now = at(`${inputs.collected}T10:00`);
    await garage.did('Desk', 'order.handOver', { id, revision: 1, to: 'the owner' });
    const { firstCharged, days, net, tax, gross } = await garage.did('Desk', 'storage.get', { orderId: id });
    return { first_charged: firstCharged, days, net, tax, gross };
  });
};

export const playedDesk: Readonly<Record<string, Case>> = { T29, T30, T39 };
