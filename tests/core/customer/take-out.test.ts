import { expect, test } from 'vitest';
import { type KeptOf, keptUntil, takeOutOf } from '../../../core/customer/take-out.ts';

const ALL: KeptOf = {
  ...{ today: '2026-11-10', years: 7, hasName: true, contacts: 3, others: 2, hasNote: true, words: 4, tries: 9 },
  ...{ openReminders: 1, orders: 2, cars: 1, papers: ['2026-10-28', '2025-06-11'], open: false },
};
const keys = (rows: readonly { readonly what: string }[]) => rows.map((row) => row.what);

test('a paper is kept to the end of the year, so many years on', () => {
  expect([keptUntil('2026-10-28', 7), keptUntil('2026-01-01', 0)]).toEqual(['2033-12-31', '2026-12-31']);
});

test('settled: notes, words, habits and ways to reach them go; the name stays as long as the last paper', () => {
  const { goes, stays } = takeOutOf(ALL);
  expect(keys(goes)).toEqual(['note', 'others', 'told', 'habits', 'reminders', 'contact']);
  expect(stays.find((row) => row.what === 'name')).toEqual({
    ...{ what: 'name', why: 'years', n: 1, until: '2033-12-31' },
  });
  expect(stays.find((row) => row.what === 'papers')).toMatchObject({ n: 2, until: '2033-12-31' });
});

test('with an order or a sum open, ways to reach them and the name stay, and it says so', () => {
  const { goes, stays } = takeOutOf({ ...ALL, open: true });
  expect(keys(goes)).toEqual(['note', 'told', 'habits', 'reminders']);
  expect(stays.filter((row) => row.why === 'open').map((row) => row.what)).toEqual(['contact', 'name']);
});

test('on the last day of the years the name still stays, the day after it may go', () => {
  expect(keys(takeOutOf({ ...ALL, today: '2033-12-31' }).goes)).not.toContain('name');
  expect(keys(takeOutOf({ ...ALL, today: '2034-01-01' }).goes)).toContain('name');
});

test('nothing is listed that is not there; digests and copies are always told', () => {
  const none = { contacts: 0, others: 0, hasNote: false, words: 0, tries: 0, openReminders: 0, orders: 0, cars: 0 };
  const { goes, stays } = takeOutOf({ ...ALL, ...none, papers: [] });
  expect(goes).toEqual([{ what: 'name', n: 1 }]);
  expect(keys(stays)).toEqual(['trail', 'copies']);
});
