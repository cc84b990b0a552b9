import type { Order } from '../sheet/order.ts';
import { amountText, type Writing, wholeText } from '../words/figures.ts';
import { t, tMaybe } from '../words/t.ts';
import type { Stop } from './close-out.ts';

/** What has to be so before this car leaves and is so, in the order of the stops; what does not touch it is not named. */
export function doneWords(order: Order, stops: readonly Stop[], writing: Writing): string[] {
  // Whoever may not see sums is told "beyond" where others are told by how much it is over.
  const open = new Set<string>(stops.map((stop) => stop.what.replace(/^beyond-/, 'over-')));
  const steps = order.jobs.flatMap((job) => job.steps);
  const outside = order.jobs.some((job) => job.lines.some((line) => line.kind === 'outside'));
  const words: readonly (readonly [string, boolean, string])[] = [
    ['clock-open', order.clocks.length > 0, t('closeOut.done-clocks')],
    ['clock-forgotten', order.clocks.some((entry) => entry.forgotten), t('closeOut.done-forgotten')],
    ['job-without-yes', order.jobs.length > 0, t('closeOut.done-yes')],
    ['over-the-yes', order.jobs.length > 0, t('closeOut.done-inside')],
    [
      'over-own-maximum',
      order.ownMaximum !== null,
      t('closeOut.done-maximum', { sum: amountText(order.ownMaximum, writing) }),
    ],
    ['po-missing', order.poNumber !== '', t('closeOut.done-po', { number: order.poNumber })],
    ['part-on-no-line', order.moves.length > 0, t('closeOut.done-noLine')],
    ['torque-missing', steps.some((step) => step.entered > 0), t('closeOut.done-torque')],
    ['second-missing', steps.some((step) => step.secondBy !== null), t('closeOut.done-second')],
    [
      'mileage-out-missing',
      order.mileageOut !== null,
      t('closeOut.done-mileage', { mileage: `${wholeText(order.mileageOut ?? 0, writing)}\u00a0${order.car.unit}` }),
    ],
    ['outside-bill-missing', outside, t('closeOut.done-bill')],
    [
      'old-parts-unanswered',
      order.oldPartsAnswer !== '',
      t('closeOut.done-oldParts', {
        answer: tMaybe(`closeOut.oldPart-${order.oldPartsAnswer}`) ?? order.oldPartsAnswer,
      }),
    ],
  ];
  return words.flatMap(([what, touches, sentence]) => (touches && !open.has(what) ? [sentence] : []));
}
