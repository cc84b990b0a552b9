import { expect, test } from 'vitest';
import {
  bayMinutes,
  type ClockEntry,
  efficiencyX10,
  entryMinutes,
  hoursX1000,
  manMinutes,
} from '../../../core/bench/clock.ts';

const MINUTE = 60_000;
const work = (personId: string, jobId: string | null, on: number, off: number | null): ClockEntry => ({
  personId,
  jobId,
  kind: 'work',
  on: on * MINUTE,
  off: off === null ? null : off * MINUTE,
});

test('an entry without an end counts nothing, nor do breaks', () => {
  const entries = [
    work('A', 'job', 0, null),
    work('A', 'job', 10, 25),
    { ...work('A', 'job', 25, 40), kind: 'break' as const },
  ];
  expect(manMinutes(entries)).toEqual(new Map([['job', 15]]));
  expect(bayMinutes(entries)).toEqual(new Map([['job', 15]]));
  expect(entryMinutes(work('A', 'job', 0, null))).toBe(0);
});

test('bay time is the union of spans, whatever their order', () => {
  const entries = [
    work('B', 'job', 50, 60),
    work('A', 'job', 0, 20),
    work('B', 'job', 10, 15),
    work('C', 'job', 20, 30),
  ];
  expect(bayMinutes(entries).get('job')).toBe(40);
  expect(manMinutes(entries).get('job')).toBe(45);
});

test('hours of a line billed by the clock, and efficiency of nothing', () => {
  expect(hoursX1000(100)).toBe(1_667);
  expect(efficiencyX10(4_500, 0)).toBeNull();
});
