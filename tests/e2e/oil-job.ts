import type { InputOf } from '../../core/contract/index.ts';
import { type Garage, PEOPLE } from './garage.ts';

type Content = InputOf<'jobBook.save'>['content'];

/**
 * An invented job with all that a bench needs: parts of the shelf, outside work, a hold, torque and a second signature.
 * By hand, in cents: 0.7 h x 9600 = 6720, supplies 336, washers 420, oil 1.2 x 3150 = 3780, lab 4200: 15456;
 * 20 % tax 3091; 18547.
 */
export const OIL_JOB = {
  title: 'Change the axle oil',
  bookHours: 700,
  sourceOfFigures: 'invented for the test',
  lines: [
    { kind: 'part', words: 'Plug washer', partNumber: 'CW-18', condition: 'new', quantity: 2000, unitPrice: 210 },
    { kind: 'fluid', words: 'Gear oil', partNumber: 'GO-7590', quantity: 1200, unit: 'L', unitPrice: 3150 },
    { kind: 'outside', words: 'Fluid lab, one sample', quantity: 1000, unitPrice: 4200 },
  ],
  cautions: ['Fill plug before drain plug.'],
  steps: [
    { n: 1, do: 'Lift, arms locked', hold: 'the car rocks: down again' },
    { n: 2, do: 'Drain, sample', fluidOut: { what: 'gear oil', quantity: 1200 } },
    {
      n: 3,
      do: 'Fill, plugs with new washers',
      second: 'signs',
      fluidIn: { what: 'gear oil', quantity: 1200 },
      torque: { what: 'Plugs', pattern: 'free', count: 2, stages: [{ Nm: 35 }] },
    },
  ],
} as const satisfies Content;
export const OIL_SUM = '185.47';

/** A car with the oil job on its sheet and said yes to, and what it takes on the shelf. Returns the order's id. */
export async function orderWithOilJob(garage: Garage): Promise<string> {
  const bin = { cost: 60, unit: '', onHand: 40_000 };
  await garage.did('Odile', 'part.add', { ...bin, number: 'CW-18', words: 'Plug washer', price: 210, bin: 'D 02' });
  await garage.did('Odile', 'part.add', {
    ...{ number: 'GO-7590', words: 'Gear oil', unit: 'L', price: 3150, cost: 1480, bin: 'Oil 3', onHand: 22_500 },
  });
  const saved = await garage.did('Odile', 'jobBook.save', { id: null, basedOn: 0, content: OIL_JOB });
  const orderId = await garage.booked({ door: { oldParts: 'show' } });
  await garage.did('Odile', 'job.fromBook', { orderId, bookJobId: saved.id });
  await garage.yes(orderId);
  return orderId;
}

/** The same, with everything done that must be done before the invoice but the mileage out. */
export async function orderReadyToClose(garage: Garage): Promise<string> {
  const id = await orderWithOilJob(garage);
  const { jobs } = await garage.order(id);
  const jobId = jobs[0]?.id ?? '';
  const nessa = { personId: garage.personId('Nessa'), code: PEOPLE[3].code };
  for (const [n, entered, second] of [
    [1, 0, null],
    [2, 0, null],
    [3, 2, nessa],
  ] as const) {
    if (entered > 0) await garage.did('Runa', 'torque.make', { jobId, step: n, touch: 0, count: entered });
    await garage.did('Runa', 'step.tick', { jobId, n, state: 'done', second });
  }
  const lab = jobs[0]?.lines.find((line) => line.kind === 'outside')?.id ?? '';
  await garage.did('Odile', 'awaited.order', {
    ...{ lineId: lab, kind: 'outside', supplier: 'Fennick Fluid Lab', dueOn: null },
  });
  const { awaited, revision } = await garage.order(id);
  await garage.did('Odile', 'awaited.arrive', { id: awaited[0]?.id ?? '', cost: 3000 });
  await garage.did('Odile', 'order.change', { id, revision, change: { oldPartsAnswer: 'shown' } });
  return id;
}
