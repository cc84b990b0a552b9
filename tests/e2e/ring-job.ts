import type { InputOf } from '../../core/contract/index.ts';
import type { Garage } from './garage.ts';

type Content = InputOf<'jobBook.save'>['content'];

/** An invented job: a ring of six in two rounds that somebody else signs, a figure at two places, a fill by level. */
export const RING_JOB = {
  title: 'Rebuild the axle',
  bookHours: 2000,
  sourceOfFigures: 'invented for the test',
  lines: [{ kind: 'part', words: 'Ring bolt', partNumber: 'RB-6', condition: 'new', quantity: 6000, unitPrice: 480 }],
  cautions: ['Fill plug before drain plug.'],
  steps: [
    { n: 1, do: 'Lift, arms locked', hold: 'the car rocks: down again' },
    {
      n: 2,
      do: 'Ring on, six new bolts',
      second: 'signs',
      oneTime: [{ part: 'ring bolt', count: 6 }],
      torque: { what: 'Ring bolts', pattern: 'ring', count: 6, stages: [{ Nm: 30 }, { Nm: 60 }] },
    },
    { n: 3, do: 'Backlash', measure: { what: 'backlash', unit: 'mm', least: 0.13, most: 0.18, places: 2 } },
    { n: 4, do: 'Fill', level: 'it runs over the hole', fluidIn: { what: 'gear oil', quantity: 1200 } },
    { n: 5, do: 'Look for drips' },
  ],
} as const satisfies Content;

export interface RingOrder {
  readonly orderId: string;
  readonly jobId: string;
}

/** A car with the ring job on its sheet and said yes to; bolts of it on the shelf. */
export async function orderWithRing(garage: Garage): Promise<RingOrder> {
  await garage.did('Odile', 'part.add', {
    ...{ number: 'RB-6', words: 'Ring bolt', unit: '', price: 480, cost: 200, bin: 'B 01', onHand: 40_000 },
  });
  const saved = await garage.did('Odile', 'jobBook.save', { id: null, basedOn: 0, content: RING_JOB });
  const orderId = await garage.booked();
  const { id: jobId } = await garage.did('Odile', 'job.fromBook', { orderId, bookJobId: saved.id });
  await garage.yes(orderId);
  return { orderId, jobId };
}

/** How many touches of step 2 the shop has, and which holes in which order. */
export async function touchesMade(garage: Garage, jobId: string): Promise<{ made: number; due: number | null }> {
  const { made, due } = await garage.did('Runa', 'torque.get', { jobId, step: 2 });
  return { made, due };
}
