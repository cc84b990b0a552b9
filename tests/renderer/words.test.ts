import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { money } from '../../core/money/money.ts';
import { reckonSheet } from '../../core/money/totals.ts';
import { USAGES } from '../../renderer/places/set-up/countries.ts';
import { isLate, nextWords, promiseWords } from '../../renderer/places/today/row-words.ts';
import {
  amountText,
  PLAIN_WRITING,
  quantityText,
  rateText,
  readAmount,
  spanText,
  wholeText,
} from '../../renderer/words/figures.ts';
import { listWords } from '../../renderer/words/list.ts';
import { reckoningSentence } from '../../renderer/words/reckoning.ts';
import { tMaybe } from '../../renderer/words/t.ts';
import {
  civilText,
  dayText,
  longDay,
  nearDays,
  nearText,
  timeText,
  weekdayNames,
  weekdayText,
} from '../../renderer/words/times.ts';
import { anyRules, anySheet } from '../core/money/sheets.ts';

/** A sentence with a figure that was not filled in. */
const UNFILLED = /[{}]/;

describe('sums', () => {
  test('as a country writes them can be read again, to the minor unit', () => {
    fc.assert(
      fc.property(fc.constantFrom(...USAGES), fc.integer({ min: -1e11, max: 1e11 }), (usage, minor) => {
        const writing = { ...PLAIN_WRITING, ...usage };
        expect(readAmount(amountText(minor, writing), writing)).toBe(minor + 0);
      }),
    );
  });

  test('a blank between thousands does not break over lines, and a minus is as wide as a plus', () => {
    const writing = { ...PLAIN_WRITING, decimal: ',', group: ' ' };
    expect(amountText(-123_456_789, writing)).toBe('\u22121\u00a0234\u00a0567,89');
    expect(wholeText(1_061_480, writing)).toBe('1\u00a0061\u00a0480');
  });

  test('one that may not be seen is nothing', () => expect(amountText(null, PLAIN_WRITING)).toBe(''));

  test('a currency without a minor unit has no decimals', () => {
    expect(amountText(12_345, { ...PLAIN_WRITING, currency: 'JPY' })).toBe('12,345');
    expect(readAmount('12.5', { ...PLAIN_WRITING, currency: 'JPY' })).toBeNull();
  });
});

describe('other figures', () => {
  test('quantities, rates, spans and lists', () => {
    expect(quantityText(6_200, 'h', PLAIN_WRITING)).toBe('6.2\u00a0h');
    expect(quantityText(2_000, '', PLAIN_WRITING)).toBe('2');
    expect(rateText(88_750, { ...PLAIN_WRITING, decimal: ',' })).toBe('8,875\u00a0%');
    expect(spanText(41 * 60_000 + 59_999)).toBe('0:41');
    expect(spanText(727 * 60_000)).toBe('12:07');
    expect(spanText(-1)).toBe('0:00');
    expect([[], ['A'], ['A', 'B'], ['A', 'B', 'C']].map(listWords)).toEqual(['', 'A', 'A and B', 'A, B and C']);
  });
});

describe('times stand on the shop’s own wall clock', () => {
  test.each(['', '2026-02-30', 'soon', '2026-11'])('%j is no civil date and is written as nothing', (text) => {
    expect(civilText(text, PLAIN_WRITING)).toBe('');
    expect(civilText(text, { ...PLAIN_WRITING, dateForm: 'month-day' })).toBe('');
  });

  test('days are read in the shop’s language and in English', () => {
    const german = { ...PLAIN_WRITING, language: 'de' };
    const words = ['gestern', 'heute', 'morgen', 'übermorgen', 'yesterday', 'today', 'tomorrow'];
    expect(words.map((word) => nearDays(german).get(word))).toEqual([-1, 0, 1, 2, -1, 0, 1]);
    expect(nearDays(PLAIN_WRITING).get('morgen')).toBeUndefined();
    expect(weekdayNames(german)[0]).toEqual(['Montag', 'Monday']);
    expect(weekdayNames(german)[6]).toEqual(['Sonntag', 'Sunday']);
  });

  const now = Date.parse('2026-11-18T10:42Z');
  const berlin = { ...PLAIN_WRITING, zone: 'Europe/Berlin' };

  test('whatever the machine’s zone', () => {
    expect(timeText(now, PLAIN_WRITING)).toBe('10:42');
    expect(timeText(now, berlin)).toBe('11:42');
    expect(timeText(Date.parse('2026-11-18T06:50Z'), berlin)).toBe('7:50');
    expect(timeText(Date.parse('2026-11-18T23:05Z'), berlin)).toBe('0:05');
    // Summer time ends on 25 October 2026: the same wall time comes twice.
    expect(timeText(Date.parse('2026-10-25T00:30Z'), berlin)).toBe('2:30');
    expect(timeText(Date.parse('2026-10-25T01:30Z'), berlin)).toBe('2:30');
  });

  test('near, far and in another year', () => {
    expect(nearText(now - 3_600_000, PLAIN_WRITING, now)).toBe('9:42');
    expect(nearText(now - 86_400_000, PLAIN_WRITING, now)).toBe('Tue 10:42');
    expect(nearText(now - 7 * 86_400_000, PLAIN_WRITING, now)).toBe('11 Nov');
    expect(dayText(Date.parse('2025-11-18T10:42Z'), PLAIN_WRITING, now)).toBe('18 Nov 2025');
    expect(weekdayText(now, PLAIN_WRITING)).toBe('Wed 18 Nov');
    expect(longDay(now, PLAIN_WRITING)).toEqual({ weekday: 'Wednesday', rest: '18 November, 10:42' });
  });

  test('a civil date is the same day everywhere', () => {
    for (const zone of ['Pacific/Kiritimati', 'Pacific/Pago_Pago', 'UTC'])
      expect(civilText('2026-11-18', { ...PLAIN_WRITING, zone })).toBe('18 Nov 2026');
  });
});

test('every step of every reckoning has its sentence, with all its figures', () => {
  fc.assert(
    fc.property(anySheet, anyRules, (sheet, rules) => {
      for (const step of reckonSheet(sheet, rules).reckoning) {
        expect(tMaybe(`reckoning.${step.rule}`), step.rule).not.toBeNull();
        expect(reckoningSentence(step, PLAIN_WRITING), step.rule).not.toMatch(UNFILLED);
      }
    }),
  );
});

test('the sums of a reckoning are written as sums', () => {
  const step = { rule: 'line-amount', on: { line: 'x', quantity: 4_500, unitPrice: 9_600 }, result: money(43_200) };
  expect(reckoningSentence(step, PLAIN_WRITING)).toBe('4.5 at 96.00');
  const tax = {
    rule: 'tax-exclusive-by-document',
    on: { name: 'Sales tax', ratePpm: 62_500, base: 10_000 },
    result: 625,
  };
  expect(reckoningSentence(tax, PLAIN_WRITING)).toBe('Sales tax, 6.25\u00a0% on 100.00, rounded once');
});

describe('a row of Today', () => {
  type Row = Parameters<typeof nextWords>[0];
  const row = (next: Partial<Row['next']>, more: Partial<Row> = {}): Row => ({
    ...{ orderId: 'o', number: 1187, plate: 'KTB 4471', car: 'Corvane R', customer: 'Ilse Vandermeer' },
    ...{ complaint: '', titles: [], promiseAt: null, promiseWords: '', clocks: [], expected: null, absent: null },
    next: { whose: 'ours', what: 'start-work', with: {}, since: 0, promise: 'none', ...next },
    ...more,
  });

  test('says its sum where it may be seen, and that there is one where not', () => {
    expect(nextWords(row({ what: 'pay', with: { balance: 123_456 } }), PLAIN_WRITING)).toBe('Pay 1,234.56');
    const unseen = nextWords(row({ what: 'pay' }), PLAIN_WRITING);
    expect(unseen).not.toMatch(UNFILLED);
    expect(unseen).not.toMatch(/\d/);
  });

  test('is late by its promise, or by what was ordered for it', () => {
    expect(isLate(row({ promise: 'late' }))).toBe(true);
    expect(isLate(row({ what: 'deliver', with: { late: 1 } }))).toBe(true);
    expect(isLate(row({ promise: 'soon', with: { late: 0 } }))).toBe(false);
  });

  test('says the promise by its time, else in its words, else that there is none', () => {
    const at = Date.parse('2026-03-10T16:30Z');
    const promised = row({ promise: 'fine' }, { promiseAt: at, promiseWords: 'before the school run' });
    expect(promiseWords(promised, PLAIN_WRITING, at - 3_600_000)).toContain('16:30');
    expect(promiseWords({ ...promised, promiseAt: null }, PLAIN_WRITING, at)).toBe('before the school run');
    expect(promiseWords(row({}), PLAIN_WRITING, at)).not.toBe('');
  });
});
