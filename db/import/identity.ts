import type { CarDraft, CustomerDraft, VisitDraft } from '../../core/bring-in/row.ts';
import { foldPhone, foldPlate, foldText } from '../fold.ts';

/** Fewer digits than these are no number to tell people apart by; of more these last ones count. */
const DIGITS = 7;

/** Somebody as a row or the shop has them. */
export type Somebody = Pick<CustomerDraft, 'name' | 'phone' | 'phone2' | 'email' | 'address'>;

/**
 * By what a customer is known again: the name with a phone number however written, with the e-mail, or with the address
 * where there is neither. Empty where there is nothing but a name.
 */
export function customerKeys(one: Somebody, always: { readonly address: boolean }): string[] {
  const name = foldText(one.name);
  const phones = [one.phone, one.phone2]
    .map((phone) => foldPhone(phone).slice(-DIGITS))
    .filter((digits) => digits.length === DIGITS);
  const keys = [
    ...phones.map((digits) => `${name}|phone ${digits}`),
    ...(one.email === '' ? [] : [`${name}|mail ${one.email.toLowerCase()}`]),
  ];
  const address = foldText(one.address.join(' '));
  return (always.address || keys.length === 0) && address !== '' ? [...keys, `${name}|lives ${address}`] : keys;
}

/** By what a car is known again: the VIN, then the plate however written. */
export const carKeys = (car: Pick<CarDraft, 'vin' | 'plate'>): string[] => [
  ...(car.vin === '' ? [] : [`vin ${car.vin}`]),
  ...(foldPlate(car.plate) === '' ? [] : [`plate ${foldPlate(car.plate)}`]),
];

/** By what a past visit of a car is known again. */
export const visitKey = (visit: Pick<VisitDraft, 'on' | 'mileage' | 'words'>): string =>
  `${visit.on}|${visit.mileage ?? ''}|${foldText(visit.words)}`;
