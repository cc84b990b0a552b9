import { expect, test } from 'vitest';
import { sightOf } from '../../../core/contract/sight.ts';

const ALL = { mechanicPrices: true, deskCost: true, mechanicCost: true };

test('the owner sees everything and the desk prices, whatever is set; whoever is not signed in nothing', () => {
  expect(sightOf('owner', null)).toEqual({ seesPrices: true, seesCost: true });
  expect(sightOf('desk', null)).toEqual({ seesPrices: true, seesCost: false });
  expect(sightOf('mechanic', null)).toEqual({ seesPrices: false, seesCost: false });
  expect(sightOf(null, ALL)).toEqual({ seesPrices: false, seesCost: false });
});

test('what the owner lets them see beside that', () => {
  expect(sightOf('desk', { ...ALL, deskCost: false })).toEqual({ seesPrices: true, seesCost: false });
  expect(sightOf('desk', ALL)).toEqual({ seesPrices: true, seesCost: true });
  expect(sightOf('mechanic', { ...ALL, mechanicPrices: false })).toEqual({ seesPrices: false, seesCost: true });
  expect(sightOf('mechanic', { ...ALL, mechanicCost: false })).toEqual({ seesPrices: true, seesCost: false });
});
