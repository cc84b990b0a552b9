import { expect, test } from 'vitest';
import { answeredWords, bestHours, type Try } from '../../../core/customer/answers.ts';

const clock = (time: string) => {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  return hours * 60 + minutes;
};
const tries = (answered: readonly string[], nobody: readonly string[]): Try[] => [
  ...answered.map((time) => ({ minute: clock(time), way: 'phone' as const, answered: true })),
  ...nobody.map((time) => ({ minute: clock(time), way: 'phone' as const, answered: false })),
];

test('few tries are no guess: five answers at eight say nothing yet', () => {
  expect(bestHours([])).toBe(null);
  expect(bestHours(tries(['8:00', '8:05', '8:10', '8:15', '8:20'], []))).toBe(null);
});

test('the best two hours by hand: all of four before ten against one of four later', () => {
  // From half past seven four of four answered, (4 + 1) / (4 + 2); from eight three of three, (3 + 1) / (3 + 2).
  const all = tries(['7:50', '8:30', '9:00', '9:20', '12:10'], ['11:00', '14:30', '16:00']);
  expect(bestHours(all)).toEqual({ from: clock('7:30'), to: clock('9:30'), answered: 4, tries: 4 });
  // A silence at half past seven puts the later hours before the earlier ones.
  const silent = tries(['8:10', '8:30', '9:00', '9:50', '12:10'], ['7:30', '11:00', '14:30', '16:00']);
  expect(bestHours(silent)).toEqual({ from: clock('8:00'), to: clock('10:00'), answered: 4, tries: 4 });
});

test('where nobody answers, or everybody always does, no hours are better than others', () => {
  expect(bestHours(tries([], ['8:00', '9:00', '10:00', '11:00', '12:00', '13:00']))).toBe(null);
  expect(bestHours(tries(['8:00', '11:00', '14:00'], ['9:00', '12:00', '15:00', '17:00']))).toBe(null);
});

test('two answers are too few to shade, however good their share', () => {
  expect(bestHours(tries(['8:00', '8:30'], ['10:00', '11:00', '12:00', '13:00', '14:00']))).toBe(null);
});

const HOUR = 3_600_000;

test('a message that was answered counts once, when the answer came; one without counts when it went', () => {
  const words = [
    { at: 0, from: 'us' },
    { at: HOUR, from: 'them' },
    { at: 30 * HOUR, from: 'us' },
  ] as const;
  expect(answeredWords(words, 100 * HOUR)).toEqual([
    { at: HOUR, answered: true },
    { at: 30 * HOUR, answered: false },
  ]);
});

test('a message of an hour ago is not held against anybody; an answer after twelve hours comes too late for it', () => {
  expect(answeredWords([{ at: 0, from: 'us' }], HOUR)).toEqual([]);
  const late = [
    { at: 0, from: 'us' },
    { at: 12 * HOUR + 1, from: 'them' },
  ] as const;
  expect(answeredWords(late, 40 * HOUR).map((one) => one.answered)).toEqual([false, true]);
});
