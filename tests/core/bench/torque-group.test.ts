import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dueTouch } from '../../../core/bench/tightening.ts';
import { missingEntries, requiredEntries } from '../../../core/bench/torque.ts';
import { groupOf, touchesOf } from '../../../core/bench/torque-group.ts';
import { anyGroup } from './any-group.ts';

const plain = { degrees: [], rows: [], sides: 1, stages: [1], checkRound: false };
const group = anyGroup(32, fc.constant(1));

test('for any group: playing whatever is due ends with every hole of every side at every round, once, and nothing left', () => {
  fc.assert(
    fc.property(group, (one) => {
      const all = touchesOf(one);
      const seen = new Set<string>();
      let recorded = 0;
      for (let due = dueTouch(all, recorded); due !== null; due = dueTouch(all, recorded)) {
        const touch = all[recorded];
        seen.add(`${touch?.side} ${touch?.hole} ${touch?.stage} ${touch?.check}`);
        recorded += 1;
      }
      const { fasteners, stages: rounds } = groupOf(one);
      expect(recorded).toBe(requiredEntries(groupOf(one)));
      expect(seen.size).toBe(fasteners * rounds);
      expect(missingEntries(groupOf(one), recorded)).toBe(0);
    }),
  );
});

test('for any group: no round begins on a side before the one before it went over every hole of that side', () => {
  fc.assert(
    fc.property(group, (one) => {
      const all = touchesOf(one);
      const round = (touch: (typeof all)[number]) => touch.stage + (touch.check ? 1 : 0);
      for (const [at, touch] of all.entries()) {
        const before = all[at - 1];
        if (before === undefined) continue;
        if (before.side === touch.side) expect(round(touch)).toBeGreaterThanOrEqual(round(before));
        else expect([touch.side, round(touch)]).toEqual([before.side + 1, 0]);
      }
    }),
  );
});

test.each([5, 6, 8, 10, 12, 14, 16, 20])(
  'a ring of %i: each hole once a round, and across from the one before',
  (n) => {
    const order = touchesOf({ ...plain, pattern: 'ring', count: n }).map((touch) => touch.hole);
    expect([...order].sort((a, b) => a - b)).toEqual(Array.from({ length: n }, (_, k) => k + 1));
    const apart = (a = 0, b = 0) => Math.min(Math.abs(a - b), n - Math.abs(a - b));
    // Even: every second one straight across. Odd: as near to it as a ring of so many has.
    for (let k = 1; k < n; k += 2) expect(apart(order[k], order[k - 1])).toBe(Math.floor(n / 2));
  },
);

test('two wheels of five with a last round in a circle: one whole, then the other', () => {
  const all = touchesOf({ ...plain, pattern: 'ring', count: 5, sides: 2, stages: [1, 2], checkRound: true });
  expect(all.map(({ side }) => side)).toEqual([...Array(15).fill(1), ...Array(15).fill(2)]);
  expect(all.slice(10, 15)).toEqual([1, 2, 3, 4, 5].map((hole) => ({ side: 1, hole, stage: 1, check: true })));
  expect(groupOf({ ...plain, pattern: 'rows', count: 4 })).toEqual({ fasteners: 4, stages: 1 });
});
