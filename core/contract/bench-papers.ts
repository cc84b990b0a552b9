import { z } from 'zod';
import { ask } from './operation.ts';
import { id } from './scalars.ts';

/** Papers of the bench, made on demand and in no series. */
export const benchPapersRoom = {
  /** What was seen, for the customer, as a PDF with the photos that are to be printed. Made on demand, in no series. */
  'check.paper': ask('crew', z.strictObject({ id }), z.strictObject({ name: z.string(), base64: z.string() })),
  /** The photos of an order that are to be printed, as a PDF with their words. Made on demand, in no series. */
  'photo.paper': ask(
    'crew',
    z.strictObject({ orderId: id }),
    z.strictObject({ name: z.string(), base64: z.string(), photos: z.int() }),
  ),
  /** The lines of the label, and the label as a PDF of 90 x 50 mm. */
  'sample.label': ask(
    'crew',
    z.strictObject({ id }),
    z.strictObject({ name: z.string(), lines: z.array(z.string()), base64: z.string() }),
  ),
};
