import type { OutputOf } from '../../core/contract/index.ts';
import { type PracticeShop, practiceShop } from '../db/practice-shop.ts';

/** A shop of its own for one case, put away afterwards whatever happens. */
export async function inShop<T>(
  settings: Parameters<typeof practiceShop>[0],
  play: (garage: PracticeShop) => Promise<T>,
): Promise<T> {
  const garage = await practiceShop(settings);
  try {
    return await play(garage);
  } finally {
    await garage.end();
  }
}

/** One tax on every kind of line, as settings of a shop. */
export const oneTax = (bp: number) => [
  {
    id: 'tax',
    name: 'Tax',
    ratePpm: bp * 100,
    kinds: [
      'labour' as const,
      'part' as const,
      'fluid' as const,
      'outside' as const,
      'supplies' as const,
      'fee' as const,
      'core' as const,
    ],
    source: '',
    checkedOn: null,
  },
];

export const ITEMISED = { mode: 'itemise' as const };

/** An invented car at the door. */
export async function bookIn(garage: PracticeShop, mileage = 42_180): Promise<OutputOf<'order.book'>> {
  return garage.did('Desk', 'order.book', {
    customer: { add: { name: 'Ilse Vandermeer', phone: '555-0142', address: ['8 Tollgate Lane'] } },
    car: { add: { plate: 'KTB 4471', vin: '', words: 'Corvane R', year: 2016, unit: 'km' } },
    complaint: 'As the case says.',
    mileage,
    here: true,
  });
}

/** Yes to jobs, up to a total. */
export async function yes(
  garage: PracticeShop,
  orderId: string,
  jobIds: readonly string[],
  total: number,
): Promise<void> {
  await garage.did('Desk', 'decision.record', {
    orderId,
    jobs: jobIds.map((jobId) => ({ jobId, answer: 'yes' as const })),
    upTo: { total },
    spoken: { name: 'Ilse Vandermeer', role: 'customer' },
    way: 'person',
  });
}

/** Reads the mileage out and issues the invoice. */
export async function invoice(garage: PracticeShop, orderId: string): Promise<OutputOf<'invoice.issue'>> {
  const order = await garage.did('Desk', 'order.get', { id: orderId });
  await garage.did('Desk', 'order.mileageOut', {
    id: orderId,
    revision: order.revision,
    mileage: order.mileageIn ?? 0,
  });
  return garage.did('Desk', 'invoice.issue', { orderId });
}
