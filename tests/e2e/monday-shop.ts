import type { InputOf } from '../../core/contract/index.ts';
import { now, today } from './clock.ts';
import { type Garage, ROAD_TEST } from './garage.ts';

/** What a garage has behind it on a Monday morning at nine: last year's cars and papers, today's bookings, work in hand. */

export const VIN = '9ZCGT6R32GL005187';
const LAST_YEAR = Date.parse('2025-05-05T09:00:00Z');
const HOUR = 3_600_000;

/** A visit of last year, invoiced, paid and fetched. */
async function wasHere(garage: Garage, name: string, change: Partial<InputOf<'order.book'>>) {
  const id = await garage.booked(change, LAST_YEAR);
  const job = await garage.did('Odile', 'job.add', { orderId: id, job: { title: 'Look' }, lines: [ROAD_TEST] });
  const yes = { jobs: [{ jobId: job.id, answer: 'yes' as const }], upTo: { total: 20_000 }, way: 'person' as const };
  const spoken = { name, role: 'customer' as const };
  await garage.did('Odile', 'decision.record', { orderId: id, ...yes, spoken }, LAST_YEAR + HOUR);
  const overrides = [{ what: 'mileage-out-missing', reason: 'Not driven' }];
  const paper = await garage.did('Odile', 'invoice.issue', { orderId: id, overrides }, LAST_YEAR + 3 * HOUR);
  const paid = { orderId: id, kind: 'payment', way: 'card', amount: paper.toPay } as const;
  await garage.did('Odile', 'payment.take', paid, LAST_YEAR + 3 * HOUR);
  const { revision, number, car } = await garage.order(id);
  await garage.did('Odile', 'order.handOver', { id, revision, to: name }, LAST_YEAR + 4 * HOUR);
  return { order: number, invoice: paper.number, carId: car.id };
}

/** A customer of the books and their car. */
async function known(garage: Garage, name: string, phone: string, plate: string, words: string) {
  const { id } = await garage.did('Odile', 'customer.add', { name, phone }, LAST_YEAR);
  const car = await garage.did('Odile', 'car.add', { customerId: id, plate, words, unit: 'km' }, LAST_YEAR);
  return { customerId: id, carId: car.id };
}

/** A car that stands here since this morning. */
const brought = (garage: Garage, name: string, plate: string, complaint: string) =>
  garage.booked({
    ...{
      customer: { add: { name, phone: '555-0191' } },
      car: { add: { plate, words: 'Oriel Estate', unit: 'km' } },
      mileage: null,
    },
    complaint,
  });

/** Three hours that were given to both mechanics and said yes to: done by half past ten, promised at half past eleven. */
async function workForTwo(garage: Garage) {
  const id = await brought(garage, 'Per Halloran', 'OYB 902', 'Leaks');
  const people = (['Runa', 'Nessa'] as const).map((name) => ({ personId: garage.personId(name), hours: 1500 }));
  const labour = { kind: 'labour', words: 'Swap the radiator', quantity: 3000, unit: 'h', unitPrice: 9600 } as const;
  await garage.job(id, 'Radiator', [{ ...labour, people }]);
  await garage.yes(id);
  const { revision } = await garage.order(id);
  await garage.did('Odile', 'order.change', { id, revision, change: { promiseAt: now() + 2.5 * HOUR } });
  return id;
}

/** Booked for eight, and at nine still not here. */
async function notHereYet(garage: Garage, name: string, plate: string, bayId: string) {
  const booking = { bayId, day: today(), from: '08:00', hours: 1000 };
  const car = { add: { plate, words: 'Oriel', unit: 'km' as const } };
  return garage.booked({ customer: { add: { name } }, car, mileage: null, here: false, booking });
}

/** All of it, through the program's own operations. */
export async function mondayMorning(garage: Garage) {
  const { revision, bays } = await garage.did('Odile', 'shop.get', {});
  const floor = { id: null, name: 'Floor', words: 'by the door' };
  await garage.did('Odile', 'shop.bays', { revision, bays: [...bays, floor] });
  const [one = '', two = ''] = (await garage.did('Odile', 'shop.get', {})).bays.map(({ id }) => id);
  const corvane = { add: { plate: 'KTB 4471', vin: VIN, words: 'Corvane R', year: 2016, unit: 'km' as const } };
  const old = await wasHere(garage, 'Ilse Vandermeer', { car: corvane });
  const sold = await wasHere(garage, 'Tilda Brok', {
    ...{ customer: { add: { name: 'Tilda Brok' } }, car: { add: { plate: 'TBK 555', words: 'Oriel', unit: 'km' } } },
    complaint: 'It hums.',
  });
  const van = await known(garage, 'Gull Street Bakery', '555-0160', 'GSB 481', 'Brackwater Hauler');
  const { revision: on } = await garage.did('Odile', 'car.get', { id: van.carId });
  await garage.did('Odile', 'car.plate', { id: van.carId, revision: on, plate: 'WXY 700', from: '2025-09-01' });
  const lena = await known(garage, 'Lena Osker', '555-0188', 'LEN 61', 'Oriel');
  const helene = await known(garage, 'Helene Osker', '555 0188', 'HLN 62', 'Corvane');
  const forTwo = await workForTwo(garage);
  const ready = await brought(garage, 'Cleo Marsh', 'MRS 12', 'Clunks');
  const asked = await brought(garage, 'Nils Voss', 'NVO 31', 'Whines');
  await garage.job(asked);
  const missed = [
    await notHereYet(garage, 'Ada Rind', 'RIN 40', one),
    await notHereYet(garage, 'Bo Falk', 'FLK 90', two),
  ];
  const ring = {
    number: 'OR-583',
    words: 'O-ring 58 x 3',
    price: 640,
    cost: 300,
    unit: '',
    bin: 'D 07',
    onHand: 20_000,
  };
  await garage.did('Odile', 'part.add', ring);
  return { old, sold, van, lena, helene, forTwo, ready, asked, missed };
}
