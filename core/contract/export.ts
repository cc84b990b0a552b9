import { z } from 'zod';
import { EXPORTS } from './export-kinds.ts';
import { ask } from './operation.ts';
import { words } from './scalars.ts';

export const exportRoom = {
  /**
   * What the shop holds, to take elsewhere, a piece at a time: call again with `next` until it is null. Customers, cars and
   * visits have the columns that bringing a file in knows; figures are those whose column is named in `figures`.
   */
  'export.rows': ask(
    'desk',
    z.strictObject({
      kind: z.enum(EXPORTS),
      after: words(64).default(''),
      most: z.int().min(1).max(2000).default(1000),
    }),
    z.strictObject({
      columns: z.array(z.string()),
      figures: z.array(z.string()),
      rows: z.array(z.array(z.string())),
      next: z.string().nullable(),
    }),
  ),
};
