import type { z } from 'zod';
import { readVin } from '../../core/car/vin.ts';
import type { carFields, customerFields } from '../../core/contract/desk.ts';
import type { Context, Handlers } from '../context.ts';
import { foldPhone, foldPlate, foldText } from '../fold.ts';
import { newId } from '../id.ts';
import { signedIn } from '../people.ts';
import { badInput, held, notFound } from '../refusal.ts';
import { nextNumber } from '../series.ts';
import type { CarRow, CustomerRow } from '../tables.ts';
import { takePayment } from './payment.ts';

type CustomerFields = z.output<typeof customerFields>;
type CarFields = z.output<typeof carFields>;

const customerColumns = (
  fields: CustomerFields,
): Omit<CustomerRow, 'id' | 'revision' | 'made_at' | 'language' | 'consents' | 'joined_into'> => ({
  name: fields.name,
  phone: fields.phone,
  phone2: fields.phone2,
  email: fields.email,
  address: JSON.stringify(fields.address),
  tell_by: fields.tellBy,
  tax_number: fields.taxNumber,
  tax_exempt: fields.taxExempt,
  po_required: fields.poRequired ? 1 : 0,
  may_yes: JSON.stringify(fields.mayYes),
  note: fields.note,
  find_name: foldText(fields.name),
  find_phone: foldPhone(fields.phone),
  find_phone2: foldPhone(fields.phone2),
});

export const customerFieldsOf = (row: CustomerRow): CustomerFields => ({
  name: row.name,
  phone: row.phone,
  phone2: row.phone2,
  email: row.email,
  address: JSON.parse(row.address) as string[],
  tellBy: row.tell_by,
  taxNumber: row.tax_number,
  taxExempt: row.tax_exempt,
  poRequired: row.po_required === 1,
  mayYes: JSON.parse(row.may_yes) as CustomerFields['mayYes'],
  note: row.note,
});

function carColumns(fields: CarFields): Omit<CarRow, 'id' | 'revision' | 'made_at' | 'outline'> {
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

async function addCustomer(context: Context, fields: CustomerFields): Promise<string> {
  const id = newId();
  await context.write.insert('customer', {
    id,
    revision: 1,
    made_at: context.now,
    ...customerColumns(fields),
    language: null,
    consents: null,
    joined_into: null,
  });
  return id;
}

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
}

export const deskHandlers: Handlers = {
  'customer.add': async (input, context) => ({ id: await addCustomer(context, input), revision: 1 }),
  'customer.change': async ({ id, revision, change }, context) => {
    const row = await context.tx.selectFrom('customer').selectAll().where('id', '=', id).executeTakeFirst();
    if (!row) throw notFound('customer', id);
    const fields = Object.assign(
      customerFieldsOf(row),
      Object.fromEntries(Object.entries(change).filter(([, value]) => value !== undefined)),
    );
    return {
      id,
      revision: await context.write.edit('customer', id, revision, customerColumns(fields), change, customerFieldsOf),
    };
  },
  'customer.get': async ({ id }, context) => {
    const row = await context.tx.selectFrom('customer').selectAll().where('id', '=', id).executeTakeFirst();
    if (!row) throw notFound('customer', id);
    const cars = await context.tx
      .selectFrom('car')
      .innerJoin('car_owner', 'car_owner.car_id', 'car.id')
      .selectAll('car')
      .where('car_owner.customer_id', '=', id)
      .where('car_owner.to_day', 'is', null)
      .execute();
    const orders = await context.tx
      .selectFrom('work_order')
      .innerJoin('car', 'car.id', 'work_order.car_id')
      .select(['work_order.id', 'work_order.number', 'work_order.opened_at', 'car.words', 'car.plate'])
      .where('work_order.customer_id', '=', id)
      .orderBy('work_order.opened_at', 'desc')
      .limit(200)
      .execute();
    const papers = await context.tx
      .selectFrom('paper')
      .select(['work_order_id', 'kind', 'gross'])
      .where('customer_id', '=', id)
      .where('kind', 'in', ['invoice', 'credit-note'])
      .execute();
    const paid = await context.tx
      .selectFrom('payment')
      .innerJoin('work_order', 'work_order.id', 'payment.work_order_id')
      .select(['payment.work_order_id', 'payment.amount'])
      .where('work_order.customer_id', '=', id)
      .execute();
    const toPay = (orderId: string) => {
      const mine = papers.filter((paper) => paper.work_order_id === orderId);
      if (mine.length === 0) return 0;
      return (
        mine.reduce((sum, paper) => sum + (paper.kind === 'invoice' ? paper.gross : -paper.gross), 0) -
        paid.filter((one) => one.work_order_id === orderId).reduce((sum, one) => sum + one.amount, 0)
      );
    };
    return {
      id,
      revision: row.revision,
      fields: customerFieldsOf(row),
      cars: cars.map((car) => ({
        id: car.id,
        plate: car.plate,
        vin: car.vin,
        words: car.words,
        year: car.year,
        unit: car.unit,
      })),
      orders: orders.map((order) => ({
        id: order.id,
        number: order.number,
        openedAt: order.opened_at,
        car: `${order.plate} ${order.words}`.trim(),
        toPay: context.seesPrices ? toPay(order.id) : null,
      })),
      owed: context.seesPrices ? orders.reduce((sum, order) => sum + toPay(order.id), 0) : null,
      since: row.made_at,
    };
  },
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
    if (!car) throw notFound('car', input.id);
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
    return { id: input.id };
  },
  'order.book': async (input, context) => {
    const { write, now } = context;
    const customerId = 'id' in input.customer ? input.customer.id : await addCustomer(context, input.customer.add);
    const carId = 'id' in input.car ? input.car.id : await addCar(context, input.car.add, customerId);
    for (const [table, id] of [
      ['customer', customerId],
      ['customer', input.payerId],
      ['car', carId],
    ] as const) {
      if (id === null) continue;
      const row = await context.tx.selectFrom(table).select('id').where('id', '=', id).executeTakeFirst();
      if (!row) throw notFound(table, id);
    }
    const id = newId();
    const number = await nextNumber(context, 'order');
    await write.insert('work_order', {
      id,
      revision: 1,
      number,
      customer_id: customerId,
      payer_id: input.payerId,
      car_id: carId,
      opened_at: now,
      opened_by: signedIn(context).id,
      complaint: input.complaint,
      when_it_happens: JSON.stringify(input.when),
      door: JSON.stringify(input.door),
      mileage_in: input.mileage,
      mileage_out: null,
      arrived_at: input.here ? now : null,
      handed_over_at: null,
      handed_over_to: '',
      cancelled_at: null,
      cancel_why: '',
      promise_at: input.promiseAt,
      promise_words: input.promiseWords,
      own_maximum: input.ownMaximum,
      po_number: input.poNumber,
      old_parts_answer: '',
      counter_sale: null,
    });
    if (input.mileage !== null) await readMileage(context, carId, id, input.mileage, input.mileageDoubt);
    if (input.booking) {
      const bay = await context.tx
        .selectFrom('bay')
        .select('id')
        .where('id', '=', input.booking.bayId)
        .executeTakeFirst();
      if (!bay) throw notFound('bay', input.booking.bayId);
      await write.insert('booking', {
        id: newId(),
        work_order_id: id,
        bay_id: bay.id,
        day: input.booking.day,
        from_time: input.booking.from,
        hours: input.booking.hours,
        revision: null,
        words: null,
        person_id: null,
        no_show_at: null,
        taken_out: null,
      });
    }
    const taken =
      input.deposit === null
        ? null
        : await takePayment(context, {
            ...input.deposit,
            ...{ orderId: id, kind: 'deposit', invoicePaperId: null, note: '' },
          });
    const receipt = taken && { paperId: taken.receiptPaperId, number: taken.receiptNumber };
    return { id, number, customerId, carId, revision: 1, receipt };
  },
};
