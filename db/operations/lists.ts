import type { Context, Handlers } from '../context.ts';
import { foldPhone, foldPlate, foldText } from '../fold.ts';
import { declinedOfCar } from '../order/declined.ts';
import { loadOrders } from '../order/load.ts';
import { standsOf } from '../order/place.ts';
import { letterOf, reckonOrder } from '../order/reckon.ts';
import { settingsOf } from '../people.ts';
import { notFound } from '../refusal.ts';
import { carFieldsOf, NO_CAR } from './desk.ts';

const like = (text: string) => `%${text.replace(/[%_]/g, '')}%`;

async function pastVisitsOf(context: Context, carId: string) {
  const rows = await context.tx
    .selectFrom('past_visit')
    .selectAll()
    .where('car_id', '=', carId)
    .orderBy('on_day', 'desc')
    .execute();
  return rows.map(({ id, on_day, mileage, words, amount }) => ({
    ...{ id, on: on_day, mileage, words },
    amount: context.seesPrices ? amount : null,
  }));
}

export const listHandlers: Handlers = {
  'customer.list': async ({ text, most }, context) => {
    const digits = foldPhone(text);
    const rows = await context.tx
      .selectFrom('customer')
      .select(['customer.id', 'customer.name', 'customer.phone'])
      .select((on) => [
        on
          .selectFrom('car_owner')
          .select((count) => count.fn.countAll<number>().as('n'))
          .whereRef('car_owner.customer_id', '=', 'customer.id')
          .where('to_day', 'is', null)
          .as('cars'),
        on
          .selectFrom('work_order')
          .select((latest) => latest.fn.max('opened_at').as('at'))
          .whereRef('work_order.customer_id', '=', 'customer.id')
          .as('lastVisit'),
      ])
      .where('joined_into', 'is', null)
      .where((on) =>
        on.or([
          on('find_name', 'like', like(foldText(text))),
          ...(digits.length >= 3 ? [on('find_phone', 'like', like(digits))] : []),
        ]),
      )
      .orderBy('customer.find_name')
      .limit(most)
      .execute();
    return {
      rows: rows.map((row) => ({
        id: row.id,
        name: row.name,
        phone: row.phone,
        cars: Number(row.cars ?? 0),
        lastVisit: row.lastVisit,
      })),
    };
  },
  'car.list': async ({ text, most }, context) => {
    const rows = await context.tx
      .selectFrom('car')
      .leftJoin('car_owner', (on) => on.onRef('car_owner.car_id', '=', 'car.id').on('car_owner.to_day', 'is', null))
      .leftJoin('customer', 'customer.id', 'car_owner.customer_id')
      .select(['car.id', 'car.plate', 'car.vin', 'car.words', 'car.year', 'car.unit', 'customer.name as owner'])
      .select((on) =>
        on
          .selectFrom('work_order')
          .select((latest) => latest.fn.max('opened_at').as('at'))
          .whereRef('work_order.car_id', '=', 'car.id')
          .as('lastVisit'),
      )
      .where('car.id', '<>', NO_CAR)
      .where((on) =>
        on.or([
          on('car.find_plate', 'like', like(foldPlate(text))),
          on('car.find_words', 'like', like(foldText(text))),
        ]),
      )
      .orderBy('car.plate')
      .limit(most)
      .execute();
    return { rows: rows.map((row) => ({ ...row, owner: row.owner ?? '' })) };
  },
  'car.get': async ({ id }, context) => {
    const { tx } = context;
    const car = await tx.selectFrom('car').selectAll().where('id', '=', id).executeTakeFirst();
    if (!car) throw notFound('car', id);
    const owners = await tx
      .selectFrom('car_owner')
      .innerJoin('customer', 'customer.id', 'car_owner.customer_id')
      .select(['customer.id', 'customer.name', 'customer.phone', 'from_day', 'to_day'])
      .where('car_id', '=', id)
      .orderBy('from_day')
      .execute();
    const plates = await tx.selectFrom('car_plate').selectAll().where('car_id', '=', id).orderBy('from_day').execute();
    const readings = await tx
      .selectFrom('odometer_reading')
      .selectAll()
      .where('car_id', '=', id)
      .orderBy('at')
      .orderBy('id')
      .execute();
    const orders = await tx
      .selectFrom('work_order')
      .select('id')
      .where('car_id', '=', id)
      .orderBy('opened_at', 'desc')
      .limit(100)
      .execute();
    const settings = settingsOf(context);
    const visits = [];
    for (const loaded of await loadOrders(
      context,
      orders.map((order) => order.id),
    )) {
      const reckoned = reckonOrder(loaded, settings);
      const invoice = loaded.papers.find((paper) => paper.kind === 'invoice');
      visits.push({
        orderId: loaded.order.id,
        number: loaded.order.number,
        openedAt: loaded.order.opened_at,
        mileageIn: loaded.order.mileage_in,
        mileageOut: loaded.order.mileage_out,
        complaint: loaded.order.complaint,
        jobs: reckoned.inSum.map((job) => ({
          title: job.title,
          letter: letterOf(job.place),
          amount: context.seesPrices ? (reckoned.totals.jobs.get(job.id) ?? 0) : null,
        })),
        invoice: invoice
          ? { paperId: invoice.id, number: invoice.number, gross: context.seesPrices ? invoice.gross : null }
          : null,
        open: standsOf(loaded),
      });
    }
    // Each replaced clock carries on from the old one's last figure.
    let carried = 0;
    const shown = readings.map((row) => {
      const trueDistance = carried + row.reading;
      if (row.event === 'replaced') carried = trueDistance - (row.new_start ?? 0);
      return { reading: row.reading, on: row.on_day, event: row.event, newStart: row.new_start, trueDistance };
    });
    const owner = owners.find((row) => row.to_day === null);
    return {
      id,
      revision: car.revision,
      fields: carFieldsOf(car),
      owner: owner ? { id: owner.id, name: owner.name, phone: owner.phone } : null,
      owners: owners.map((row) => ({ name: row.name, from: row.from_day, to: row.to_day })),
      plates: plates.map((row) => ({ plate: row.plate, from: row.from_day, to: row.to_day })),
      readings: shown,
      visits,
      pastVisits: await pastVisitsOf(context, id),
      declined: await declinedOfCar(context, id, null),
    };
  },
};
