import { expect, test } from 'vitest';
import { alikeBy } from '../../../core/customer/doubles.ts';

const one = { name: 'per halloran', phones: ['01715550101'], email: 'per@halloran.example' };
const like = (other: Partial<typeof one>) => alikeBy(one, { name: 'x y', phones: [''], email: '', ...other });

test('a name in another order, or with a middle name; a surname alone says nothing', () => {
  expect(like({ name: 'halloran, per' })).toEqual(['name']);
  expect(like({ name: 'per m. halloran' })).toEqual(['name']);
  expect(like({ name: 'halloran' })).toEqual([]);
  expect(like({ name: 'per hallorand' })).toEqual([]);
});

test('a number with and without its country; a few digits are no number', () => {
  expect(like({ phones: ['491715550101'] })).toEqual(['phone']);
  expect(like({ phones: ['', '1715550101'] })).toEqual(['phone']);
  expect(like({ phones: ['50101'] })).toEqual([]);
  expect(like({ phones: ['1715550102'] })).toEqual([]);
});

test('an e-mail; nothing is alike by being empty', () => {
  expect(like({ email: 'per@halloran.example' })).toEqual(['email']);
  expect(alikeBy({ name: '', phones: [''], email: '' }, { name: '', phones: [''], email: '' })).toEqual([]);
});
