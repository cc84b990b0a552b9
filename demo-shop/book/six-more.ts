import { OUTPUT_SEAL, TRANSFER_CASE, WHEEL_BEARING } from './axles.ts';
import { CLUTCH, HEAD_GASKET, TIMING_BELT } from './engine.ts';
import type { BookJob } from './pieces.ts';

/**
 * What the demo garage wrote into its job book: with the four that every book begins with, ten. All figures invented.
 */
export const SIX_MORE: readonly BookJob[] = [
  OUTPUT_SEAL,
  CLUTCH,
  HEAD_GASKET,
  WHEEL_BEARING,
  TRANSFER_CASE,
  TIMING_BELT,
];
