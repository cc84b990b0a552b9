import type { z } from 'zod';
import { readVin } from '../../core/car/vin.ts';
import type { carFields } from '../../core/contract/desk.ts';
import type { ParsedInputOf } from '../../core/contract/index.ts';
import { creditAtBooking } from '../account.ts';
import type { Context, Handlers } from '../context.ts';
import { foldPlate, foldText } from '../fold.ts';
import { newId } from '../id.ts';
import { agreedAt } from '../order/storage.ts';
import { settingsOf, signedIn } from '../people.ts';
import { badInput, held, notFound } from '../refusal.ts';
import { lookAgain } from '../remind.ts';
import { nextNumber } from '../series.ts';
import type { CarRow } from '../tables.ts';
import { addBooking } from './booking.ts';
import { addCustomer, standingCustomer } from './customer.ts';
import { takePayment } from './payment.ts';

type CarFields = z.output<typeof carFields>;

/** The columns of a car's fields. Throws bad-input for a VIN with a character that none has. */
export function carColumns(fields: CarFields): Omit<CarRow, 'id' | 'revision' | 'made_at' | 'outline'> {
  const vin = fields.vin.toUpperCase().replace(/[\s-]/g, '');
  if (vin !== '' && readVin(vin).verdict === 'refuse_character') throw badInput('car.vin', 'vin-character');
  return {
    plate: fields.plate.toUpperCase(),
    vin,
    words: fields.words,
    year: fields.year,
    unit: fields.unit,
    axle_code: fields.axleCode,
    note: fields.note,
    find_plate: foldPlate(fields.plate),
    find_words: foldText(fields.words),
  };
}

export const carFieldsOf = (row: CarRow): CarFields => ({
  plate: row.plate,
  vin: row.vin,
  words: row.words,
  year: row.year,
  unit: row.unit,
  axleCode: row.axle_code,
  note: row.note,
});

async function addCar(context: Context, fields: CarFields, customerId: string | null): Promise<string> {
  const id = newId();
  const columns = carColumns(fields);
  await context.write.insert('car', { id, revision: 1, made_at: context.now, ...columns, outline: null });
  if (columns.plate !== '')
    await context.write.insert('car_plate', {
      id: newId(),
      car_id: id,
      plate: columns.plate,
      find_plate: columns.find_plate,
      from_day: context.today,
      to_day: null,
    });
  if (customerId !== null)
    await context.write.insert('car_owner', {
      id: newId(),
      car_id: id,
      customer_id: customerId,
      from_day: context.today,
      to_day: null,
    });
  return id;
}

/** A plate that was written down wrong: the one that holds now is put right, so that it is found. A new plate is car.plate. */
async function correctPlate(context: Context, carId: string, car: Pick<CarRow, 'plate' | 'find_plate'>): Promise<void> {
  const now = await context.tx
    .selectFrom('car_plate')
    .select('id')
    .where('car_id', '=', carId)
    .where('to_day', 'is', null)
    .executeTakeFirst();
  const columns = { plate: car.plate, find_plate: car.find_plate };
  if (now && car.plate === '') await context.write.update('car_plate', now.id, { to_day: context.today });
  else if (now) await context.write.update('car_plate', now.id, columns);
  else if (car.plate !== '')
    await context.write.insert('car_plate', {
      id: newId(),
      car_id: carId,
      ...columns,
      from_day: context.today,
      to_day: null,
    });
}

export type Doubt = 'none' | 'as-typed' | 'clock-replaced' | 'owner-told';

/** Writes a mileage down, against the last one. Lower without a word for it is held: the desk is asked, nothing is guessed. */
export async function readMileage(
  context: Context,
  carId: string,
  orderId: string | null,
  reading: number,
  doubt: Doubt,
): Promise<void> {
  const last = await context.tx
    .selectFrom('odometer_reading')
    .selectAll()
    .where('car_id', '=', carId)
    .orderBy('at', 'desc')
    .orderBy('id', 'desc')
    .limit(1)
    .executeTakeFirst();
  const from = last ? (last.event === 'replaced' ? (last.new_start ?? 0) : last.reading) : 0;
  if (reading < from && doubt === 'none') throw held([{ what: 'mileage-lower', with: { last: from, typed: reading } }]);
  const replaced = doubt === 'clock-replaced' && reading < from;
  if (replaced) {
    await context.write.insert('odometer_reading', {
      id: newId(),
      car_id: carId,
      work_order_id: orderId,
      reading: from,
      on_day: context.today,
      at: context.now,
      event: 'replaced',
      new_start: 0,
      why: 'clock replaced',
      person_id: signedIn(context).id,
    });
  }
  await context.write.insert('odometer_reading', {
    id: newId(),
    car_id: carId,
    work_order_id: orderId,
    reading,
    on_day: context.today,
    at: context.now,
    event: doubt === 'owner-told' ? 'owner-told' : 'read',
    new_start: null,
    why: reading < from ? doubt : '',
    person_id: signedIn(context).id,
  });
  await lookAgain(context, carId);
}

/**
 * The one row that stands for no car. Every order names a car, so that each question that is asked of orders can be asked
 * of a sale over the counter, too; it has no plate, no VIN and no owner, is in no list, and no paper prints it.
 */
export const NO_CAR = 'counter';

/** Who pays for an order: who is named, else who pays for this customer; null: the customer. */
async function payerOf(context: Context, customerId: string, named: string | null): Promise<string | null> {
  const row = await context.tx
    .selectFrom('customer')
    .select('invoice_to')
    .where('id', '=', customerId)
    .executeTakeFirst();
  const payer = named ?? row?.invoice_to ?? null;
  return payer === null ? null : standingCustomer(context, payer);
}

async function carOf(context: Context, car: ParsedInputOf<'order.book'>['car'], customerId: string): Promise<string> {
  if ('add' in car) return addCar(context, car.add, customerId);
  const id = 'none' in car ? NO_CAR : car.id;
  const row = await context.tx.selectFrom('car').select('id').where('id', '=', id).executeTakeFirst();
  if (row && 'none' in car) return id;
  if (!row && 'none' in car) {
    const { distance } = settingsOf(context);
    await context.write.insert('car', {
      ...{ id, revision: 1, made_at: context.now, plate: '', vin: '', words: '—', year: null, unit: distance },
      ...{ axle_code: '', note: '', find_plate: '', find_words: '', outline: null },
    });
    return id;
  }
  if (!row || id === NO_CAR) throw notFound('car', id);
  return id;
}

export const deskHandlers: Handlers = {
  'car.add': async ({ customerId, ...fields }, context) => ({
    id: await addCar(context, fields, customerId),
    revision: 1,
  }),
  'car.change': async ({ id, revision, change }, context) => {
    const row = await context.tx.selectFrom('car').selectAll().where('id', '=', id).executeTakeFirst();
    if (!row) throw notFound('car', id);
    const fields = Object.assign(
      carFieldsOf(row),
      Object.fromEntries(Object.entries(change).filter(([, value]) => value !== undefined)),
    );
    const columns = carColumns(fields);
    const next = await context.write.edit('car', id, revision, columns, change, carFieldsOf);
    if (columns.find_plate !== row.find_plate || columns.plate !== row.plate) await correctPlate(context, id, columns);
    return { id, revision: next };
  },
  'car.odometer': async (input, context) => {
    const car = await context.tx.selectFrom('car').select('id').where('id', '=', input.id).executeTakeFirst();
    if (!car || input.id === NO_CAR) throw notFound('car', input.id);
    if (input.on > context.today) throw badInput('on', 'in-the-future');
    await context.write.insert('odometer_reading', {
      id: newId(),
      car_id: input.id,
      work_order_id: null,
      reading: input.reading,
      on_day: input.on,
      at: context.now,
      event: input.event,
      new_start: input.newStart,
      why: input.why,
      person_id: signedIn(context).id,
    });
    await lookAgain(context, input.id);
    return { id: input.id };
  },
  'order.book': async (input, context) => {
    const { write, now } = context;
    const customerId =
      'id' in input.customer
        ? await standingCustomer(context, input.customer.id)
        : await addCustomer(context, input.customer.add);
    const payerId = await payerOf(context, customerId, input.payerId);
    const noCar = 'none' in input.car;
    const carId = await carOf(context, input.car, customerId);
    const id = newId();
    const number = await nextNumber(context, 'order');
    await write.insert('work_order', {
      id,
      revision: 1,
      number,
      customer_id: customerId,
      payer_id: payerId,
      car_id: carId,
      opened_at: now,
      opened_by: signedIn(context).id,
      complaint: input.complaint,
      when_it_happens: JSON.stringify(input.when),
      door: JSON.stringify(input.door),
      mileage_in: noCar ? null : input.mileage,
      mileage_out: null,
      arrived_at: input.here || noCar ? now : null,
      handed_over_at: null,
      handed_over_to: '',
      cancelled_at: null,
      cancel_why: '',
      promise_at: input.promiseAt,
      promise_words: input.promiseWords,
      own_maximum: input.ownMaximum,
      po_number: input.poNumber,
      old_parts_answer: '',
      counter_sale: noCar ? 1 : null,
      storage_agreed_at: agreedAt(null, input.door, now),
      storage_of: null,
    });
    if (input.mileage !== null && !noCar) await readMileage(context, carId, id, input.mileage, input.mileageDoubt);
    if (input.booking) await addBooking(context, input.booking, { orderId: id });
    const taken =
      input.deposit === null
        ? null
        : await takePayment(context, {
            ...input.deposit,
            ...{ orderId: id, kind: 'deposit', invoicePaperId: null, note: '' },
          });
    const receipt = taken && { paperId: taken.receiptPaperId, number: taken.receiptNumber };
    const credit = await creditAtBooking(context, id, payerId ?? customerId);
    return { id, number, customerId, carId, revision: 1, receipt, credit };
  },
};
