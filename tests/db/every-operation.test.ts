import { expect, test } from 'vitest';
import { operations } from '../../core/contract/index.ts';
import { handlers } from '../../db/operations/index.ts';

test('every operation of the contract has its handler, and no handler is without its operation', () => {
  expect(Object.keys(handlers).sort()).toEqual(Object.keys(operations).sort());
});
