import fc from 'fast-check';
import type { DescribedGroup } from '../../../core/bench/torque-group.ts';

const rest = {
  sides: fc.integer({ min: 1, max: 4 }),
  checkRound: fc.boolean(),
};

/** Any group that a procedure can describe, with up to so many holes a side and rounds of these kinds. */
export function anyGroup<S>(
  most: number,
  stage: fc.Arbitrary<S>,
): fc.Arbitrary<DescribedGroup & { readonly stages: readonly S[] }> {
  const stages = fc.array(stage, { minLength: 1, maxLength: 6 });
  const count = fc.integer({ min: 1, max: most });
  const none = fc.constant<number[]>([]);
  const ring = fc.record({
    pattern: fc.constantFrom('ring' as const, 'free' as const),
    ...{ count, degrees: none, rows: none, stages, ...rest },
  });
  const angles = fc
    .record({
      degrees: fc.array(fc.integer({ min: 0, max: 359 }), { minLength: 1, maxLength: most }),
      ...{ rows: none, stages, ...rest },
    })
    .map((one) => ({ ...one, pattern: 'angles' as const, count: one.degrees.length }));
  const pairs = fc
    .record({ pairs: fc.integer({ min: 1, max: Math.max(1, Math.floor(most / 2)) }), stages, ...rest })
    .map(({ pairs: of, ...one }) => ({ ...one, pattern: 'pairs' as const, count: 2 * of, degrees: [], rows: [] }));
  const rows = fc
    .record({ rows: fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 1, maxLength: most / 4 }), stages, ...rest })
    .map((one) => ({
      ...{ ...one, pattern: 'rows' as const, degrees: [] },
      count: one.rows.reduce((all, row) => all + row, 0),
    }));
  return fc.oneof(ring, angles, pairs, rows);
}
