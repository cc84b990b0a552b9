import { expect, test } from 'vitest';
import { checkProcedure } from '../../core/bench/procedure-check.ts';
import { STARTING_JOBS } from '../../core/bench/starting-jobs.ts';
import { touchesOf } from '../../core/bench/torque-group.ts';
import { bookJobContent } from '../../core/contract/procedure.ts';
import { SIX_MORE } from '../../demo-shop/book/six-more.ts';

const TEN = [...STARTING_JOBS, ...SIX_MORE].map((job) => bookJobContent.parse(job));
const steps = TEN.flatMap((job) => job.steps);
const groups = steps.flatMap((step) => step.torque ?? []);

test('ten jobs, each with hours, parts, six steps or more and a caution; their figures say that they are invented', () => {
  expect(new Set(TEN.map((job) => job.title)).size).toBe(10);
  for (const job of TEN) {
    expect(job.bookHours, job.title).toBeGreaterThan(0);
    expect(
      job.lines.some((line) => line.kind === 'part'),
      job.title,
    ).toBe(true);
    expect(job.steps.length, job.title).toBeGreaterThanOrEqual(6);
    expect(job.cautions.at(-1), job.title).toContain('manual, local rules and licensed people come first');
    expect(job.sourceOfFigures, job.title).toContain('invented');
    expect(checkProcedure(job), job.title).toEqual([]);
  }
});

test('two jobs at least have rings of different sizes', () => {
  const sizes = TEN.map((job) =>
    job.steps.flatMap(({ torque }) => (torque?.pattern === 'ring' && torque.count > 5 ? [torque.count] : [])),
  );
  expect(sizes.filter((all) => new Set(all).size > 1).length).toBeGreaterThanOrEqual(2);
});

test('every kind of knowledge of the trade has its place in one of them', () => {
  expect(new Set(groups.map((group) => group.pattern))).toEqual(new Set(['ring', 'angles', 'pairs', 'rows', 'free']));
  for (const group of groups) expect(touchesOf(group).length).toBeGreaterThan(0);
  expect(steps.some((step) => step.plug === 'fill-opened')).toBe(true);
  expect(steps.some((step) => step.oneTime.some(({ part }) => part === 'plug washer'))).toBe(true);
  expect(steps.some((step) => /prised (all round|out all round)/.test(step.do))).toBe(true);
  expect(steps.some((step) => step.level.includes('runs over'))).toBe(true);
  expect(steps.some((step) => step.fluidIn?.strokes != null)).toBe(true);
  expect(steps.some((step) => step.care.includes('gloves'))).toBe(true);
  expect(steps.some((step) => step.sample !== null)).toBe(true);
  expect(groups.some((group) => group.checkRound)).toBe(true);
  expect(groups.some((group) => group.thread !== null)).toBe(true);
  expect(groups.some((group) => group.extension !== null)).toBe(true);
  expect(groups.some((group) => group.stages.some((stage) => 'Nm' in stage && 'lbfft' in stage))).toBe(true);
  expect(steps.some((step) => step.reopens !== null)).toBe(true);
  expect(TEN.some((job) => job.after.length > 0)).toBe(true);
});
