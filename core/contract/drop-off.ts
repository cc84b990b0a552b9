import { z } from 'zod';
import { ask } from './operation.ts';
import { id } from './scalars.ts';

/** What was taken over at the door, as a slip for whoever left the car. */
export const dropOffRoom = {
  /** Made on demand from what stands on the order, and kept nowhere. Sums only for whoever may see prices. */
  'dropOff.pdf': ask('desk', z.strictObject({ orderId: id }), z.strictObject({ name: z.string(), base64: z.string() })),
};
