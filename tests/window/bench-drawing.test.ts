import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { touchesOf } from '../../core/bench/torque-group.ts';
import { PHOTO_MOST } from '../../core/contract/photo.ts';
import { MOST_BYTES } from '../../renderer/bench/photo-file.ts';
import { boltPlaces, type Group, type TorqueStep } from '../../renderer/bench/torque/bolt-places.ts';
import { stageWords } from '../../renderer/bench/torque/stage-words.ts';
import { torqueView } from '../../renderer/bench/torque/torque-view.ts';
import { beyond, measuredOf, NOT_MEASURED, scaleEnd } from '../../renderer/places/bay/found/limit.ts';
import { likelyMends } from '../../renderer/places/bay/found/MendRow.tsx';

const plain: Omit<Group, 'pattern' | 'count'> = {
  what: '',
  degrees: [],
  rows: [],
  sides: 1,
  stages: [{ Nm: 30 }, { Nm: 60 }],
  checkRound: false,
  thread: null,
  extension: null,
};

const anyGroup: fc.Arbitrary<Group> = fc
  .record({
    pattern: fc.constantFrom('ring', 'pairs', 'rows', 'free', 'angles' as const),
    half: fc.integer({ min: 1, max: 16 }),
    sides: fc.integer({ min: 1, max: 2 }),
    checkRound: fc.boolean(),
  })
  .map(({ pattern, half, sides, checkRound }) => ({
    ...plain,
    ...{ pattern, count: half * 2, sides, checkRound },
    // Uneven on purpose: each hole a little further from the one before.
    degrees: pattern === 'angles' ? Array.from({ length: half * 2 }, (_, k) => (k * (k + 20) * 0.2) % 360) : [],
    rows: pattern === 'rows' ? [half, half] : [],
  }));

/** A step as the shop would answer it, with nothing made yet. */
function stepOf(group: Group, made = 0): TorqueStep {
  const touches = touchesOf(group).map((touch, at) => ({ ...touch, touch: at, made: null }));
  return {
    ...{ jobId: 'j', step: 1, letter: 'A', do: '', group, source: '', state: 'open' as const, made, wrench: null },
    ...{ stages: [], touches, due: made < touches.length ? made : null },
  };
}

describe('bolts as they are drawn', () => {
  test('none lies over another and all lie inside the drawing, in every layout', () => {
    fc.assert(
      fc.property(anyGroup, (group) => {
        const { places, bolt } = boltPlaces(group);
        expect(places).toHaveLength(group.count);
        for (const [at, one] of places.entries()) {
          expect(Math.min(one.x, one.y)).toBeGreaterThanOrEqual(bolt);
          expect(Math.max(one.x, one.y)).toBeLessThanOrEqual(200 - bolt);
          for (const two of places.slice(at + 1))
            expect(Math.hypot(one.x - two.x, one.y - two.y)).toBeGreaterThan(2 * bolt);
        }
      }),
    );
  });

  test('numbers follow the order of tightening, and each tap leaves one bolt more tight until all are', () => {
    fc.assert(
      fc.property(anyGroup, (group) => {
        const step = stepOf(group);
        expect([...torqueView(step, null).numbers.values()]).toEqual(
          Array.from({ length: group.count }, (_, k) => k + 1),
        );
        for (let made = 0; made <= step.touches.length; made += 1) {
          const view = torqueView(step, made);
          expect(view.due?.touch ?? step.touches.length).toBe(made);
          expect(view.roundMade).toBe(view.due === null ? view.round.length : made % group.count);
        }
      }),
    );
  });

  test('what waits for the shop is drawn as made, and never more than there is', () => {
    const step = stepOf({ ...plain, pattern: 'ring', count: 5 }, 2);
    expect(torqueView(step, 4).due?.touch).toBe(4);
    expect(torqueView(step, null).due?.touch).toBe(2);
    expect(torqueView(step, 99).due).toBeNull();
  });
});

describe('figures', () => {
  test('both units, the entered one as entered and first; a printed pair as printed; an angle alone', () => {
    const torque = { Nm: 60, lbfft: 44.2537 };
    expect(stageWords({ entered: { Nm: 60 }, torque, degrees: null })).toEqual(['60\u00a0N·m', '44\u00a0lbf·ft']);
    expect(stageWords({ entered: { lbfft: 44 }, torque: { Nm: 59.656, lbfft: 44 }, degrees: null })).toEqual([
      '44\u00a0lbf·ft',
      '60\u00a0N·m',
    ]);
    expect(stageWords({ entered: { Nm: 9, lbfft: 7 }, torque: { Nm: 9, lbfft: 7 }, degrees: null })).toEqual([
      '9\u00a0N·m',
      '7\u00a0lbf·ft',
    ]);
    expect(stageWords({ entered: { degrees: 90 }, torque: null, degrees: 90 })).toEqual(['90°', '']);
  });

  test('a value against its limit: how far beyond, either way, and a scale that holds both', () => {
    expect(beyond({ value: 1200, limit: 500, side: 'most' })).toBe(700);
    expect(beyond({ value: 500, limit: 500, side: 'most' })).toBe(0);
    expect(beyond({ value: 2000, limit: 3000, side: 'least' })).toBe(1000);
    expect(beyond({ value: 2000, limit: null, side: 'least' })).toBeNull();
    fc.assert(
      fc.property(fc.nat(1e8), fc.nat(1e8), (value, limit) => {
        expect(scaleEnd(value, limit)).toBeGreaterThanOrEqual(Math.max(value, limit));
      }),
    );
    expect(measuredOf({ ...NOT_MEASURED, value: 1200, limit: 500, source: 'own' }, 'play')).toEqual({
      ...{ what: 'play', value: 1200, unit: 'mm', least: null, most: 500, source: 'own' },
    });
    expect(measuredOf(NOT_MEASURED, 'play')).toBeNull();
  });

  test('a photo is made smaller where the shop would not take it', () => {
    expect(MOST_BYTES).toBe(PHOTO_MOST);
  });
});

test('jobs of the book that share a word with what was found come first', () => {
  const row = (title: string) => ({
    id: title,
    title,
    car: '',
    version: 1,
    draft: null,
    bookHours: 600,
    steps: 0,
    warnings: 0,
  });
  const rows = [row('Change the oil'), row('Rear drop links, pair'), row('Links and joints')];
  expect(likelyMends(rows, 'Drop link').map((one) => one.title)).toEqual(['Rear drop links, pair', 'Links and joints']);
  expect(likelyMends(rows, '')).toEqual([]);
});
