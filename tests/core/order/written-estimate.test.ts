import { expect, test } from 'vitest';
import { unwritten, type YesSaid } from '../../../core/order/written-estimate.ts';

const yes: YesSaid = { ceiling: 10_001, jobIds: ['A', 'B'], way: 'phone', quotePaperId: 'q2' };
const first = { paperId: 'q1', jobIds: ['A'] };
const second = { paperId: 'q2', jobIds: ['A', 'B', 'C'] };

// Washington's sum of 100 (TRADE 2, chapter [10]) as the example; no place's rule is shipped.
test.each([
  ['no rule', null, yes, [], null],
  ['exactly at the sum', 10_000, { ...yes, ceiling: 10_000 }, [], null],
  ['above it, nothing on paper', 10_000, yes, [], 'no-quote'],
  ['a quote without job B is none for it', 10_000, yes, [first], 'no-quote'],
  ['spoken, and answers the quote', 10_000, yes, [first, second], null],
  ['spoken, and answers none', 10_000, { ...yes, quotePaperId: null }, [second], 'by-word'],
  [
    'spoken in person, answers the older one',
    10_000,
    { ...yes, way: 'person', quotePaperId: 'q1' },
    [first, second],
    'by-word',
  ],
  ['signed, with a quote there', 10_000, { ...yes, way: 'signed', quotePaperId: null }, [second], null],
  ['written, with a quote there', 10_000, { ...yes, way: 'message', quotePaperId: null }, [second], null],
  ['a no only: no yes that needs one', 10_000, { ...yes, jobIds: [] }, [], null],
] as const)('%s', (_words, above, said, quotes, lacks) => {
  expect(unwritten(above, said, quotes)).toBe(lacks);
});
