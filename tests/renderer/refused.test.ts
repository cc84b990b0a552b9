import { expect, test } from 'vitest';
import { refusedAt } from '../../renderer/places/book-in/refused.ts';
import { t } from '../../renderer/words/t.ts';

test('what the shop refuses of a booking is said at the field where it was typed', () => {
  const { errors, elsewhere } = refusedAt([
    { path: 'car.add.plate', problem: 'not-a-plate' },
    { path: 'promiseAt', problem: 'too-little', with: { least: 0 } },
    { path: 'door.marks.3', problem: 'too-long', with: { most: 160 } },
  ]);
  expect(errors.plate).toBe(t('errors.bad-input-one', { problem: t('errors.problem-not-a-plate') }));
  expect(errors.promise).toBe(t('intake.promiseWrong'));
  expect(errors.marks).toContain('160');
  expect(elsewhere).toEqual([]);
});

test('what has no field on the page is said all the same', () => {
  const { errors, elsewhere } = refusedAt([{ path: 'door.strokes', problem: 'wrong-form' }]);
  expect(errors).toEqual({});
  expect(elsewhere).toEqual([expect.stringContaining('door.strokes')]);
});
