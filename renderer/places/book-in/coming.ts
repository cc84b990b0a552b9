import type { InputOf, OutputOf } from '../../../core/contract/index.ts';
import { type Draft, doorOf, emptyDraft, readMileageText } from './draft.ts';

type Order = OutputOf<'order.get'>;

/** The page as it begins for a car that was booked before and comes now. */
export function draftOfOrder(order: Order): Draft {
  const { door, car, customer } = order;
  return {
    ...emptyDraft(car.unit),
    ...{ customerId: customer.id, name: customer.name, phone: customer.phone, tellBy: customer.tellBy },
    ...{ carId: car.id, plate: car.plate, words: car.words, vin: car.vin, complaint: order.complaint },
    ...{ fuel: door.fuel, keys: door.keys === null ? '' : String(door.keys), keysWhere: door.keysWhere },
    ...{ wheelLockKey: door.wheelLockKey, valuables: door.valuables, kept: door.marks },
    ...{
      drive: door.testDrive === null ? 'not-asked' : door.testDrive ? 'yes' : 'no',
      driveLimit: door.testDriveLimit,
    },
    ...{ oldParts: door.oldParts, storageTold: door.storageTold },
  };
}

/** Its coming as the shop takes it. What it costs to leave it here was told when it was booked, and stays. */
export const arrivalOf = (draft: Draft, order: Order): InputOf<'order.arrive'> => ({
  ...{ id: order.id, revision: order.revision },
  ...{ mileage: readMileageText(draft.mileage), mileageDoubt: draft.doubt },
  door: { ...doorOf(draft), storage: order.door.storage },
});
