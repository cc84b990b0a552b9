import { type Bearer, reduction } from './bearer.ts';
import type { LineKind, SheetDiscount } from './line.ts';
import { type Money, money, sum } from './money.ts';
import type { Steps } from './reckoning.ts';
import { spread } from './spread.ts';

const NAMED: Readonly<Record<SheetDiscount['on'], (kind: LineKind) => boolean>> = {
  labour: (kind) => kind === 'labour',
  parts: (kind) => kind === 'part' || kind === 'fluid',
  all: () => true,
};

/**
 * What the sheet's discounts take off each bearer, in minor units. One after the other, each on what the ones before it
 * left, spread by value before tax, so that the tax of each rate stays right.
 */
export function discountShares(discounts: readonly SheetDiscount[], bearers: readonly Bearer[], steps: Steps): Money[] {
  let taken = bearers.map(() => money(0));
  for (const discount of discounts) {
    const named = NAMED[discount.on];
    const left = bearers.map((bearer, at) => (named(bearer.kind) ? bearer.value - (taken[at] ?? 0) : 0));
    const base = sum(left);
    if (base <= 0) continue;
    const off = reduction(discount.reduction, base);
    steps.add('sheet-discount', { on: discount.on, words: discount.words, of: base, ...discount.reduction }, off);
    const shares = spread(off, left);
    for (const [at, share] of shares.entries()) {
      if (share !== 0) steps.add('discount-share', { place: at, line: bearers[at]?.lineId ?? '', of: off }, share);
    }
    taken = taken.map((before, at) => money(before + (shares[at] ?? 0)));
  }
  return taken;
}
