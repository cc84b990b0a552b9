import { expect, test } from 'vitest';
import { paperWords } from '../../../core/paper/words.ts';
import { dateInFigures } from '../../../core/time/date-form.ts';

// 2026-09-23 is the form of ISO 8601; the others are those of everyday use.
test.each([
  ['day-month', '23/09/2026', '23/09'],
  ['month-day', '09/23/2026', '09/23'],
  ['year-month', '2026-09-23', '09-23'],
] as const)('%s', (form, whole, short) => {
  expect(dateInFigures('2026-09-23', form, false)).toBe(whole);
  expect(dateInFigures('2026-09-23', form, true)).toBe(short);
  for (const language of ['en', 'de'] as const)
    expect(paperWords(language, form).date('2026-09-23', false)).toBe(whole);
});

test('as the language writes it where the shop says nothing', () => {
  expect(dateInFigures('2026-09-23', 'language', false)).toBeNull();
  expect(paperWords('en').date('2026-09-23', false).replaceAll('\u00a0', ' ')).toBe('23 Sep 2026');
  expect(paperWords('de').date('2026-09-23', false)).toBe('23.09.2026');
});
