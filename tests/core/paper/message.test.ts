import { expect, test } from 'vitest';
import { writeMessage } from '../../../core/paper/message.ts';

const figures = { name: 'Per Halloran', plate: 'OYB 902', car: 'Oriel Estate', sum: '1,200.00 USD', open: '' };

test('the shop’s own wording with the figures; one that nobody knows stands as … and is named', () => {
  const own = 'Dear {name}, {plate} comes to {sum}, {open} open. {slip}';
  expect(writeMessage('ready', 'en', own, figures)).toEqual({
    subject: 'OYB 902 is ready',
    text: 'Dear Per Halloran, OYB 902 comes to 1,200.00 USD, … open. {slip}',
    missing: ['open'],
  });
});

test('the program’s wording where the shop has none, in the language of the customer', () => {
  expect(writeMessage('ready', 'de', '', figures).text).toMatch(/^Guten Tag Per Halloran,/);
  expect(writeMessage('ready', 'en', '', figures).missing).toEqual(['open']);
});

test('a figure that holds braces is not read again', () => {
  expect(writeMessage('ready', 'en', '{name}', { name: '{sum}', sum: '5', plate: 'A 1' }).text).toBe('{sum}');
});
