import { expect, test } from 'vitest';
import { checkProcedure } from '../../core/bench/procedure-check.ts';
import { STARTING_JOBS } from '../../core/bench/starting-jobs.ts';
import { bookJobContent } from '../../core/contract/bench.ts';

const step = { plug: '' as const, torque: null, oneTime: [] };

// Common practice, no source: the fill plug is proved open before the drain plug is touched; one-time parts go in once.
test('draining before the fill plug is warned of', () => {
  expect(
    checkProcedure(
      [
        { ...step, n: 1, plug: 'drained' },
        { ...step, n: 2, plug: 'fill-opened' },
      ],
      'manual',
    ),
  ).toEqual([{ rule: 'drain-before-fill', step: 1 }]);
});

test('a one-time part used twice is warned of', () => {
  const bolt = [{ part: 'Ring bolt', count: 12 }];
  expect(
    checkProcedure(
      [
        { ...step, n: 1, oneTime: bolt },
        { ...step, n: 2, oneTime: [{ part: 'ring bolt ', count: 12 }] },
      ],
      'manual',
    ),
  ).toEqual([{ rule: 'one-time-twice', step: 2 }]);
});

test('a lower stage and a torque without a source are warned of', () => {
  const torque = { stages: [{ Nm: 60 }, { Nm: 30 }] };
  expect(checkProcedure([{ ...step, n: 1, torque }], ' ').map((one) => one.rule)).toEqual([
    'stage-lower',
    'torque-without-source',
  ]);
});

test('the starting jobs hold and warn of nothing, and every one ends its cautions with who comes first', () => {
  expect(STARTING_JOBS).toHaveLength(4);
  for (const job of STARTING_JOBS) {
    const content = bookJobContent.parse(job);
    expect(checkProcedure(content.steps, content.sourceOfFigures)).toEqual([]);
    expect(content.cautions.at(-1)).toBe("The maker's manual, local rules and licensed people come first.");
    expect(content.sourceOfFigures).toContain('invented');
  }
});
