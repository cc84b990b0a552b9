import { expect, test } from 'vitest';
import { type ConsentSaid, consentStands } from '../../../core/customer/consent.ts';

const said = (...answers: ConsentSaid['answer'][]): ConsentSaid[] =>
  answers.map((answer) => ({ what: 'photos', answer }));

test('the last answer holds; a no after a yes takes it back, a first no takes back nothing', () => {
  expect(consentStands([], 'photos')).toBeNull();
  expect(consentStands(said('no'), 'photos')).toEqual({ row: { what: 'photos', answer: 'no' }, withdrawn: false });
  expect(consentStands(said('yes', 'no'), 'photos')?.withdrawn).toBe(true);
  expect(consentStands(said('yes', 'no', 'yes'), 'photos')).toEqual({
    ...{ row: { what: 'photos', answer: 'yes' }, withdrawn: false },
  });
  expect(consentStands(said('yes', 'unasked', 'no'), 'photos')?.withdrawn).toBe(false);
});

test('what was said to one thing says nothing of another', () => {
  const rows: ConsentSaid[] = [...said('yes'), { what: 'history', answer: 'no' }];
  expect(consentStands(rows, 'photos')?.row.answer).toBe('yes');
  expect(consentStands(rows, 'history')).toMatchObject({ withdrawn: false });
  expect(consentStands(rows, 'reminders')).toBeNull();
});
