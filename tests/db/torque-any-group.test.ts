import fc from 'fast-check';
import { expect, test } from 'vitest';
import { requiredEntries } from '../../core/bench/torque.ts';
import { groupOf } from '../../core/bench/torque-group.ts';
import { anyGroup } from '../core/bench/any-group.ts';
import { BenchJob, type BookStep } from './bench-job.ts';

const stage = fc.oneof(
  fc.record({ Nm: fc.integer({ min: 1, max: 500 }) }),
  fc.record({ lbfft: fc.integer({ min: 1, max: 300 }) }),
  fc.record({ degrees: fc.integer({ min: 1, max: 180 }) }),
);

/** Groups, each with how many touches are tapped at once and which wrong touch is tried before each. */
const played = fc.record({
  group: anyGroup(8, stage),
  steps: fc.array(fc.record({ count: fc.integer({ min: 1, max: 40 }), wrong: fc.nat({ max: 200 }) }), {
    minLength: 1,
    maxLength: 40,
  }),
});

test('for any group and any way of tapping: what is not due is refused, and it ends exactly with the last touch', async () => {
  await fc.assert(
    fc.asyncProperty(played, async ({ group, steps }) => {
      const torque = { ...group, degrees: [...group.degrees], rows: [...group.rows], stages: [...group.stages] };
      const bench = await BenchJob.begun([{ do: 'Bolts', torque } satisfies Omit<BookStep, 'n'>]);
      try {
        const { garage, jobId } = bench;
        const required = requiredEntries(groupOf(group));
        const make = (touch: number, count: number) => ({ jobId, step: 1, touch, count });
        let made = 0;
        for (let at = 0; made < required; at += 1) {
          const { count = 1, wrong = 0 } = steps[at % steps.length] ?? {};
          if (wrong !== made)
            expect(await garage.refused('Runa', 'torque.make', make(wrong, 1))).toMatchObject({ code: 'held' });
          expect(await garage.refused('Runa', 'torque.make', make(made, required - made + 1))).toMatchObject({
            reasons: [{ what: 'torque-too-many', with: { left: required - made } }],
          });
          expect(await garage.refused('Runa', 'step.tick', { jobId, n: 1, state: 'done' })).toMatchObject({
            reasons: [{ what: 'torque-missing', with: { missing: required - made } }],
          });
          const now = Math.min(Math.max(count, Math.ceil(required / 8)), required - made);
          made += now;
          expect(await garage.did('Runa', 'torque.make', make(made - now, now))).toMatchObject({
            made,
            due: made === required ? null : made,
          });
        }
        expect(await garage.refused('Runa', 'torque.make', make(made, 1))).toMatchObject({ code: 'held' });
        await bench.tick(1);
        const { touches } = await garage.did('Runa', 'torque.get', { jobId, step: 1 });
        expect(touches.every((touch) => touch.made !== null)).toBe(true);
        const once = new Set(touches.map(({ side, hole, stage: of, check }) => `${side} ${hole} ${of} ${check}`));
        expect(once.size).toBe(required);
      } finally {
        await bench.garage.end();
      }
    }),
    { numRuns: 6, endOnFailure: true },
  );
}, 60_000);
