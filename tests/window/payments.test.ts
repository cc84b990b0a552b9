import { expect, test } from 'vitest';
import { payable, usualKind, usualWay } from '../../renderer/papers/payment-sums.ts';

const cash = { way: 'cash', balance: 23_437, cashStep: 5 } as const;

test('cash that settles all is rounded to the coins there are, as the shop reckons it', () => {
  expect(payable({ ...cash, kind: 'payment', amount: 23_437 })).toEqual({ payable: 23_435, difference: -2 });
  expect(payable({ ...cash, kind: 'payment', amount: 23_437, cashStep: 1 })).toEqual({
    payable: 23_437,
    difference: 0,
  });
  expect(payable({ ...cash, kind: 'refund', amount: 23_438, balance: -23_438 })).toEqual({
    payable: 23_440,
    difference: 2,
  });
});

test('a part, a deposit and any other way are not rounded', () => {
  expect(payable({ ...cash, kind: 'payment', amount: 10_003 })).toEqual({ payable: 10_003, difference: 0 });
  expect(payable({ ...cash, kind: 'deposit', amount: 23_437 })).toEqual({ payable: 23_437, difference: 0 });
  expect(payable({ ...cash, kind: 'payment', way: 'card', amount: 23_437 })).toEqual({
    payable: 23_437,
    difference: 0,
  });
});

test('what comes next: a deposit, then what is open, or what goes back', () => {
  expect([usualKind(false, 0), usualKind(false, -500), usualKind(true, 500), usualKind(true, -500)]).toEqual([
    'deposit',
    'deposit',
    'payment',
    'refund',
  ]);
});

test('a refund goes back the way the money came', () => {
  const came = [
    { way: 'card', amount: 500 },
    { way: 'cash', amount: 1000 },
    { way: '', amount: 2 },
    { way: 'card', amount: -100 },
  ];
  expect([usualWay('refund', came), usualWay('refund', []), usualWay('payment', came)]).toEqual([
    'cash',
    'card',
    'card',
  ]);
});
