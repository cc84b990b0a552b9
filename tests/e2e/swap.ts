import { STARTING_JOBS } from '../../core/bench/starting-jobs.ts';

/** The carrier swap as the starting job book has it, and invented prices for its lines as somebody types them. */
export const SWAP_TITLE = STARTING_JOBS[0]?.title ?? '';
export const SWAP_PRICES: Readonly<Record<string, string>> = {
  'Rebuilt carrier, exchange': '1840',
  'Ring-gear bolt': '4.85',
  'Plug washer': '2.10',
  'Shaft circlip': '3.90',
  'Output seal': '18.75',
  'O-ring': '6.40',
  'Gear oil 75W-90': '31.50',
  'Old carrier, deposit': '350',
};

/*
 * By hand, in cents: labour 6.2 h x 9600 = 59520; supplies 5 % = 2976, at most 2500; parts and fluid
 * 184000 + 12 x 485 + 2 x 210 + 2 x 390 + 2 x 1875 + 640 + 1.1 x 3150 = 198875; core 35000.
 * Together 295895; 20 % tax 59179; gross 355074. A discount of 5 % on the parts and the fluid is 9943.75, so 9944;
 * (295895 - 9944) x 1.2 = 343141.2.
 */
export const SWAP = '3,550.74';
export const DISCOUNTED = '3,431.41';
