import type { InputOf, OutputOf } from '../../../core/contract/index.ts';
import { amountText, type Writing } from '../../words/figures.ts';
import { type Draft, doorOf, emptyDraft, readMileageText } from './draft.ts';

type Order = OutputOf<'order.get'>;

/** The page as it begins for a car that was booked before and comes now. */
export function draftOfOrder(order: Order, writing: Writing): Draft {
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
    storagePerDay: amountText(door.storage?.perDay ?? null, writing),
    storageFree: String(door.storage?.freeWorkingDays ?? ''),
  };
}

/** Its coming as the shop takes it. */
export const arrivalOf = (draft: Draft, order: Order, writing: Writing): InputOf<'order.arrive'> => ({
  ...{ id: order.id, revision: order.revision },
  ...{ mileage: readMileageText(draft.mileage), mileageDoubt: draft.doubt },
  door: doorOf(draft, writing),
});
