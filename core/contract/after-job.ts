import { z } from 'zod';
import { needed } from './scalars.ts';

/** What is due on a car after a job: run-in oil, the wheels once more, the next service. Days and distance, whichever first. */
export const afterJob = z
  .strictObject({
    source: z.enum(['service', 'run-in', 'wheel-recheck']),
    words: needed(300),
    days: z.int().min(1).max(7300).nullable(),
    distance: z.int().min(1).max(1_000_000).nullable(),
  })
  .refine((one) => one.days !== null || one.distance !== null, { path: ['days'], error: 'needed' });
