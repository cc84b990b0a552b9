import { z } from 'zod';
import { ask } from './operation.ts';
import { id, instant, quantity } from './scalars.ts';

/** What a job of the book was before. */
export const bookVersionsRoom = {
  /** The newest versions first, twenty at most; drafts too. */
  'jobBook.versions': ask(
    'crew',
    z.strictObject({ id }),
    z.strictObject({
      rows: z.array(
        z.strictObject({
          versionId: id,
          version: z.int(),
          at: instant,
          /** '' for what the book began with. */
          by: z.string(),
          inUse: z.boolean(),
          /** Orders that began with it. */
          orders: z.int(),
          /** Against the version before; null for the first. */
          changed: z
            .strictObject({
              hours: z.strictObject({ from: quantity, to: quantity }).nullable(),
              added: z.int(),
              takenOut: z.int(),
              changed: z.int(),
              moved: z.boolean(),
              lines: z.boolean(),
              /** Its fixed price. */
              price: z.boolean(),
              cautions: z.boolean(),
              /** Title, car, people, source, what goes with it or comes after. */
              rest: z.boolean(),
            })
            .nullable(),
        }),
      ),
    }),
  ),
};
