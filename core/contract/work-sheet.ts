import { z } from 'zod';
import { ask } from './operation.ts';
import { id } from './scalars.ts';

/** The bench copy: what is worked on when the power is out. */
export const workSheetRoom = {
  /**
   * A job on an order, with the version it began with and what is done already; or a version of a job of the book, for no visit. Made
   * on demand and kept nowhere.
   */
  'workSheet.pdf': ask(
    'crew',
    z.union([z.strictObject({ jobId: id }), z.strictObject({ versionId: id })]),
    z.strictObject({ name: z.string(), base64: z.string() }),
  ),
};
