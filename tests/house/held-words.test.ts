import { describe, expect, test } from 'vitest';
import { HELD, type HeldWhat, STOP_WHATS } from '../../core/contract/held.ts';
import { sayHeld } from '../../electron/held-words.ts';
import { heldSentence } from '../../renderer/words/error-sentence.ts';
import { PLAIN_WRITING } from '../../renderer/words/figures.ts';
import { tMaybe } from '../../renderer/words/t.ts';

const whats = Object.keys(HELD) as HeldWhat[];

/** A reason with each of its figures given; sums and names alike stand for themselves. */
const reason = (what: HeldWhat) => ({ what, with: Object.fromEntries(HELD[what].map((name) => [name, `‹${name}›`])) });

describe.each(whats)('%s', (what) => {
  test('has its sentence in the window, and no figure is asked for that does not come', () => {
    expect(tMaybe(`held.${what}`)).not.toBeNull();
    expect(heldSentence(reason(what), PLAIN_WRITING)).not.toMatch(/[{}]/);
  });

  test('has its sentence at the command line', () => {
    expect(sayHeld(reason(what))).not.toMatch(/[{}]/);
    expect(sayHeld(reason(what))).not.toBe('');
  });
});

test('a figure that does not come is seen by these checks', () => {
  expect(heldSentence({ what: 'invoiced', with: {} }, PLAIN_WRITING)).toMatch(/\{number\}/);
  expect(sayHeld({ what: 'invoiced', with: {} })).toMatch(/\{number\}/);
});

test('every stop is one of the reasons', () => {
  expect(STOP_WHATS.filter((what) => !whats.includes(what))).toEqual([]);
});
