import { expect, test } from 'vitest';
import { cashRounding, handedOver, leastInCash } from '../../core/money/cash.ts';
import { money } from '../../core/money/money.ts';
import { usualKind, usualWay } from '../../renderer/papers/payment-sums.ts';

test('cash is rounded to the coins there are, the whole and a part alike; any other way is not', () => {
  const over = (way: 'cash' | 'card', amount: number, step = 5) => handedOver(way, money(amount), step);
  expect(over('cash', 23_437)).toEqual({ payable: 23_435, difference: -2 });
  expect(over('cash', 10_003)).toEqual({ payable: 10_005, difference: 2 });
  expect(over('cash', 23_437, 1)).toEqual({ payable: 23_437, difference: 0 });
  expect(over('card', 23_437)).toEqual({ payable: 23_437, difference: 0 });
});

test('the least that a coin pays does not round to nothing, one less does', () => {
  for (const step of [1, 2, 5, 10, 25, 50, 100]) {
    expect(cashRounding(money(leastInCash(step)), step).payable).toBe(step);
    expect(cashRounding(money(leastInCash(step) - 1), step).payable).toBe(0);
  }
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
