import { expect, test } from 'vitest';
import type { SheetLine } from '../../../core/money/line.ts';
import { money } from '../../../core/money/money.ts';
import { startSteps } from '../../../core/money/reckoning.ts';
import { wasteFeeOf } from '../../../core/money/waste-fee.ts';

const oil: SheetLine = { id: 'oil', kind: 'fluid', quantity: 1350, unitPrice: money(2400), given: false };
const fee = (line: Partial<SheetLine>, sum = 9600) =>
  wasteFeeOf(
    { amount: money(450), words: 'Oil disposal', when: 'part-or-fluid' },
    { jobs: [{ id: 'job', given: false, lines: [{ ...oil, ...line }] }], discounts: [], exempt: false },
    new Map([['job', money(sum)]]),
    startSteps(),
  );

test('a fee for what is left of parts and fluids wants one that is charged: none at 0 litres, given away, or of labour', () => {
  expect(fee({})).toBe(450);
  expect(fee({ quantity: 0 })).toBe(0);
  expect(fee({ given: true })).toBe(0);
  expect(fee({ kind: 'labour' })).toBe(0);
  expect(fee({}, 0)).toBe(0);
});
