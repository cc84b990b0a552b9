import { expect, test } from 'vitest';
import { type CheckedStep, checkProcedure, thingsToMend } from '../../core/bench/procedure-check.ts';
import { STARTING_JOBS } from '../../core/bench/starting-jobs.ts';
import { bookJobContent } from '../../core/contract/procedure.ts';

// Common practice, no source: the fill plug is proved open before the drain plug is touched; one-time parts go in once;
// wheels are tightened again after the first drive.
const bare: Omit<CheckedStep, 'n'> = {
  do: 'A step',
  plug: '',
  torque: null,
  oneTime: [],
  recheckCard: false,
  source: '',
};
const bolts = (quantity: number, condition: string | null = 'new') => ({
  kind: 'part',
  words: 'Ring bolts, used once',
  condition,
  quantity: quantity * 1000,
});
const check = (
  steps: readonly Partial<CheckedStep>[],
  { source = 'the manual, page 12', lines = [] as ReturnType<typeof bolts>[] } = {},
) =>
  checkProcedure({
    steps: steps.map((step, at) => ({ ...bare, n: at + 1, ...step })),
    sourceOfFigures: source,
    lines,
  });

test('draining before the fill plug is kept from the bench, and mended by moving the step that opens it', () => {
  expect(check([{}, { plug: 'drained' }, {}, { plug: 'fill-opened' }])).toEqual([
    { rule: 'drain-before-fill', step: 2, keepsFromBench: true, mend: { what: 'move-step', step: 4, to: 2 } },
  ]);
  expect(check([{ plug: 'drained' }])).toMatchObject([{ rule: 'drain-before-fill', mend: null }]);
  expect(check([{ plug: 'fill-opened' }, { plug: 'drained' }])).toEqual([]);
});

test('a one-time part needs new ones among the parts of the job, and again where it goes in twice', () => {
  const bolt = [{ part: 'ring bolt', count: 12 }];
  expect(check([{ oneTime: bolt }])).toEqual([
    {
      rule: 'one-time-without-new',
      step: 1,
      keepsFromBench: false,
      mend: { what: 'add-new-parts', part: 'ring bolt', count: 12 },
    },
  ]);
  expect(check([{ oneTime: bolt }], { lines: [bolts(12)] })).toEqual([]);
  expect(check([{ oneTime: bolt }], { lines: [bolts(12, 'used')] })).toMatchObject([{ rule: 'one-time-without-new' }]);
  expect(check([{ oneTime: bolt }], { lines: [bolts(10)] })).toMatchObject([{ mend: { count: 2 } }]);
  const again = [{ oneTime: bolt }, { oneTime: [{ part: 'Ring bolt ', count: 12 }] }];
  expect(check(again, { lines: [bolts(12)] })).toMatchObject([
    { rule: 'one-time-twice', step: 2, mend: { count: 12 } },
  ]);
  expect(check(again, { lines: [bolts(24)] })).toEqual([]);
});

test('a lower stage is warned of, in whatever units it stands; an angle is no torque', () => {
  const rules = (stages: NonNullable<CheckedStep['torque']>['stages']) =>
    check([{ torque: { what: 'Flange', stages } }]).map((one) => one.rule);
  expect(rules([{ Nm: 60 }, { Nm: 30 }])).toEqual(['stage-lower']);
  expect(rules([{ Nm: 60 }, { lbfft: 40 }])).toEqual(['stage-lower']);
  expect(rules([{ Nm: 60 }, { lbfft: 50 }, { degrees: 45 }])).toEqual([]);
});

test('a torque without a source is kept from the bench; the step may name its own', () => {
  const torque = { what: 'Flange', stages: [{ Nm: 60 }] };
  expect(check([{ torque }], { source: ' ' })).toEqual([
    { rule: 'torque-without-source', step: 1, keepsFromBench: true, mend: { what: 'name-source', step: 1 } },
  ]);
  expect(check([{ torque, source: 'the manual, page 7' }], { source: '' })).toEqual([]);
});

test('all torques without a source are one thing to mend, each other warning one of its own', () => {
  const torque = { what: 'Flange', stages: [{ Nm: 60 }, { Nm: 30 }] };
  expect(thingsToMend([])).toBe(0);
  expect(thingsToMend(check([{ torque }, { torque }], { source: '' }))).toBe(3);
  expect(thingsToMend(check([{ torque }, { torque }]))).toBe(2);
});

test.each([
  ['Wheel bolts', 1],
  ['Road wheels', 1],
  ['Radschrauben', 1],
  ['Räder', 1],
  ['Wheel bearing', 0],
  ['Wheel speed sensor', 0],
  ['Radlager', 0],
  ['Flywheel', 0],
])('%s without a re-check card', (what, warnings) => {
  const torque = { what, stages: [{ Nm: 110 }] };
  expect(check([{ torque }])).toHaveLength(warnings);
  expect(check([{ torque, recheckCard: true }])).toEqual([]);
  if (warnings > 0) expect(check([{ torque }])).toMatchObject([{ rule: 'wheel-without-card', keepsFromBench: false }]);
});

test('the starting jobs hold and warn of nothing, and every one ends its cautions with who comes first', () => {
  expect(STARTING_JOBS).toHaveLength(4);
  for (const job of STARTING_JOBS) {
    const content = bookJobContent.parse(job);
    expect(checkProcedure(content)).toEqual([]);
    expect(content.cautions.at(-1)).toBe("The maker's manual, local rules and licensed people come first.");
    expect(content.sourceOfFigures).toContain('invented');
  }
});

test('a part of which nobody said whether it is new counts as new; a used one does not', () => {
  const steps = [{ oneTime: [{ part: 'ring bolt', count: 10 }] }];
  expect(check(steps, { lines: [bolts(10, null)] })).toEqual([]);
  expect(check(steps, { lines: [bolts(10, 'used')] })).toMatchObject([{ rule: 'one-time-without-new' }]);
});
