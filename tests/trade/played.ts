import type { Case } from './case.ts';
import { playedClocks } from './played-clocks.ts';
import { playedClose } from './played-close.ts';
import { playedDesk } from './played-desk.ts';
import { playedLabour } from './played-labour.ts';
import { playedPayments } from './played-payments.ts';
import { playedSheets } from './played-sheets.ts';
import { playedTorque } from './played-torque.ts';

/**
 * Cases that are played as operations on a practice shop: what is answered is read back from the shop, in the words of
 * `expected`. A case that stands here as well as among the reckoned ones is run both ways.
 */
export const played: Readonly<Record<string, Case>> = {
  ...playedClocks,
  ...playedClose,
  ...playedDesk,
  ...playedLabour,
  ...playedPayments,
  ...playedSheets,
  ...playedTorque,
};

/** Cases whose point is what the program does, not a figure: they must stand in {@link played}. */
export const MUST_BE_PLAYED: readonly string[] = [
  ...[
    'T07',
    'T11',
    'T12',
    'T13',
    'T15',
    'T16',
    'T17',
    'T19',
    'T20',
    'T21',
    'T22',
    'T27',
    'T28',
    'T35',
    'T41',
    'T42',
    'T45',
  ],
];
