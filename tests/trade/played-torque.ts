import { z } from 'zod';
import { BenchJob, type BookStep } from '../db/bench-job.ts';
import { type Case, mapped } from './case.ts';

const whole = z.int();

/** A job of one invented step whose yes is there, put away afterwards. */
async function onBench<T>(steps: readonly Omit<BookStep, 'n'>[], play: (bench: BenchJob) => Promise<T>): Promise<T> {
  const bench = await BenchJob.begun(steps);
  try {
    return await play(bench);
  } finally {
    await bench.garage.end();
  }
}

const tenths = (value: number | undefined) => (value === undefined ? null : Math.round(value * 10));

export const playedTorque: Readonly<Record<string, Case>> = {
  T27: mapped(
    z.strictObject({ target_nm: whole, wrench_mm: whole, extension_mm: whole, angles_deg: z.array(whole) }),
    ({ target_nm, wrench_mm, extension_mm, angles_deg }) =>
      onBench(
        angles_deg.map((angle) => ({
          do: `Bolt, extension at ${angle} degrees`,
          torque: {
            ...{ pattern: 'free', count: 1, stages: [{ Nm: target_nm }] },
            extension: { length: extension_mm, angle },
          },
        })),
        async ({ garage, jobId }) => {
          const fields = { name: 'T1', most: 5_000_000, lever: wrench_mm * 1000 };
          const { id: wrenchId } = await garage.did('Desk', 'wrench.add', fields);
          const first = [];
          for (const at of angles_deg.keys())
            first.push((await garage.did('Runa', 'torque.get', { jobId, step: at + 1, wrenchId })).stages[0]);
          return {
            setting_nm_x10: first.map((stage) => tenths(stage?.setting?.Nm)),
            target_lbft_x10: tenths(first[0]?.torque?.lbfft),
          };
        },
      ),
  ),
  T28: mapped(
    z.strictObject({ fasteners: whole, stages: whole, recorded: whole }),
    ({ fasteners, stages, recorded }) => {
      const torque: NonNullable<BookStep['torque']> = {
        ...{ pattern: 'ring', count: fasteners },
        stages: Array.from({ length: stages }, (_, stage) => ({ Nm: 10 * (stage + 1) })),
      };
      return onBench([{ do: 'Flange bolts', torque }], async (bench) => {
        const { jobId, garage, orderId } = bench;
        if (recorded > 0) await bench.make(1, recorded);
        const { touches } = await garage.did('Runa', 'torque.get', { jobId, step: 1 });
        const { revision } = await bench.order();
        await garage.did('Runa', 'order.mileageOut', { id: orderId, revision, mileage: 42_190 });
        const { stops } = await bench.order();
        const missing = stops.find(({ what }) => what === 'torque-missing')?.with.missing ?? 0;
        if (missing !== 0) await garage.refused('Runa', 'step.tick', { jobId, n: 1, state: 'done' });
        return { required: touches.length, missing, may_close: stops.length === 0 };
      });
    },
  ),
};
