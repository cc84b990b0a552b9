import { ask } from '../../state/call.ts';
import type { Draft } from './draft.ts';

/** What the page takes over of a customer that is known, with this car of theirs or their only one; null where gone. */
export async function knownCustomer(id: string, carId: string | null): Promise<Partial<Draft> | null> {
  const answer = await ask('customer.get', { id });
  if (!answer.ok) return null;
  const { fields, cars } = answer.output;
  const only = cars.length === 1 ? cars[0] : undefined;
  const car = cars.find((one) => one.id === carId) ?? only;
  return {
    customerId: id,
    ...{ phone: fields.phone, name: fields.name, tellBy: fields.tellBy },
    carId: car?.id ?? null,
    ...(car === undefined ? {} : { plate: car.plate, words: car.words, vin: car.vin, unit: car.unit }),
  };
}

/** What the page takes over of a car that is known, with its owner where there is one. */
export async function knownCar(id: string): Promise<Partial<Draft> | null> {
  const answer = await ask('car.get', { id });
  if (!answer.ok) return null;
  const { owner, fields } = answer.output;
  if (owner !== null) return knownCustomer(owner.id, id);
  return { carId: id, plate: fields.plate, words: fields.words, vin: fields.vin, unit: fields.unit };
}
