import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type ComparedJob, whatChanged } from '../../../core/bench/what-changed.ts';

const job = (steps: readonly string[], more: Partial<ComparedJob> = {}): ComparedJob => ({
  ...{ bookHours: 1000, fixedPrice: null, lines: [], cautions: [] },
  steps: steps.map((words, at) => ({ n: at + 1, do: words })),
  ...more,
});
const NOTHING = {
  hours: null,
  added: 0,
  takenOut: 0,
  changed: 0,
  moved: false,
  lines: false,
  price: false,
  cautions: false,
  rest: false,
};

test('a version is nothing new against itself', () => {
  expect(whatChanged(job(['lift', 'drain']), job(['lift', 'drain']))).toEqual(NOTHING);
});

test('steps added, taken out, said anew, moved; hours, lines and cautions', () => {
  const before = job(['lift', 'drain', 'fill']);
  expect(whatChanged(before, job(['lift', 'drain', 'rest', 'fill']))).toEqual({ ...NOTHING, added: 1 });
  expect(whatChanged(before, job(['lift', 'fill']))).toEqual({ ...NOTHING, takenOut: 1 });
  expect(whatChanged(before, job(['lift', 'drain warm', 'fill']))).toEqual({ ...NOTHING, changed: 1 });
  expect(whatChanged(before, job(['drain', 'lift', 'fill']))).toEqual({ ...NOTHING, moved: true });
  const more = job(['lift', 'drain', 'fill'], { bookHours: 1200, lines: ['washer'], cautions: ['hot'] });
  expect(whatChanged(before, more)).toEqual({
    ...NOTHING,
    ...{ hours: { from: 1000, to: 1200 }, lines: true, cautions: true },
  });
});

test('its fixed price, named apart from what stands round the steps', () => {
  const [none, some] = [job(['lift']), job(['lift'], { fixedPrice: 69_000 })];
  expect(whatChanged(none, some)).toEqual({ ...NOTHING, price: true });
  expect(whatChanged(some, job(['lift'], { fixedPrice: 71_000 }))).toEqual({ ...NOTHING, price: true });
});

test('what stands round the steps', () => {
  const [one, other] = ['a', 'b'].map((title) => ({ ...job(['lift']), title }));
  if (!one || !other) throw new Error('two versions');
  expect(whatChanged(one, other)).toEqual({ ...NOTHING, rest: true });
});

test('what is in one and not in the other is counted once, whatever the versions', () => {
  const steps = fc.array(fc.constantFrom('a', 'b', 'c', 'd', 'e'), { maxLength: 8 });
  fc.assert(
    fc.property(steps, steps, (one, two) => {
      const { added, takenOut, changed } = whatChanged(job(one), job(two));
      expect(two.length - one.length).toBe(added - takenOut);
      expect(Math.min(added, takenOut)).toBe(0);
      const count = (all: string[], letter: string) => all.filter((step) => step === letter).length;
      const fresh = [...'abcde'].reduce((sum, letter) => sum + Math.max(0, count(two, letter) - count(one, letter)), 0);
      expect(added + changed).toBe(fresh);
    }),
  );
});
