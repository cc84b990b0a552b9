import { expect, test } from 'vitest';
import { seenBy } from '../../renderer/places/shop/roles.ts';

const NOTHING = { mechanicPrices: false, deskCost: false, mechanicCost: false };

// The page of people says this beside each role, so that it says what the shop does.
test.each([
  ['desk', {}, 'prices'],
  ['desk', { deskCost: true }, 'both'],
  ['mechanic', {}, 'neither'],
  ['mechanic', { mechanicPrices: true }, 'prices'],
  ['mechanic', { mechanicCost: true }, 'cost'],
  ['mechanic', { mechanicPrices: true, mechanicCost: true }, 'both'],
  ['mechanic', { deskCost: true }, 'neither'],
] as const)('%s with %j sees: %s', (role, more, seen) => {
  expect(seenBy(role, { sees: { ...NOTHING, ...more } })).toBe(seen);
});
