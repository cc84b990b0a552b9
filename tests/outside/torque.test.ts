import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { tighteningOrder } from '../../core/bench/tightening.ts';
import { clampLoad, torqueFor } from '../../core/measure/clamp-load.ts';
import { wrenchSetting } from '../../core/measure/torque-wrench.ts';
import { convert } from '../../core/measure/unit.ts';
import { checkFile } from './check-file.ts';

const file = checkFile(
  '03_torque.json',
  z.object({
    extensionCases: z
      .array(
        z.object({
          T: z.number(),
          L: z.number(),
          E: z.number(),
          angleDeg: z.number().default(0),
          setting: z.string(),
          printed: z.string().default(''),
        }),
      )
      .min(1),
    torqueTensionCases: z.array(
      z.object({
        K: z.number(),
        D_mm: z.number().optional(),
        D_in: z.number().optional(),
        F_kN: z.number().optional(),
        F_lbf: z.number().optional(),
        T_Nm: z.number().optional(),
        T_lbf_in: z.number().optional(),
      }),
    ),
    patterns: z.array(z.object({ bolts: z.number(), order: z.array(z.number()).nullable() })),
  }),
);

const digits = (printed: string) => printed.split('.')[1]?.length ?? 0;

describe.skipIf(file === null)('torque: published extensions, tension and patterns', () => {
  for (const { T, L, E, angleDeg, setting, printed } of file?.extensionCases ?? []) {
    test(`${T} with a lever of ${L} and ${E} more at ${angleDeg} degrees is set at ${setting}`, () => {
      const found = wrenchSetting(T, L, E, angleDeg);
      // The file writes the exact value to as many digits as it has room for.
      expect(Math.abs(found - Number(setting))).toBeLessThanOrEqual(0.5 * 10 ** -digits(setting) + 1e-9);
      if (/^[\d.]+$/.test(printed))
        expect(found.toFixed(digits(printed))).toBe(Number(printed).toFixed(digits(printed)));
    });
  }

  for (const { K, D_mm, D_in, F_kN, F_lbf, T_Nm, T_lbf_in } of file?.torqueTensionCases ?? []) {
    const diameter = D_mm ?? (D_in ?? 0) * 25.4;
    const load = F_kN ?? (F_lbf ?? 0) * 4.4482216152605e-3;
    const torque = T_Nm ?? convert('torque', T_lbf_in ?? 0, 'lbf·in', 'N·m');
    test(`T = K D F with K ${K}, ${diameter} mm, ${load} kN`, () => {
      expect(torqueFor(load, diameter, K) / torque).toBeCloseTo(1, 9);
      expect(clampLoad(torque, diameter, K).load / load).toBeCloseTo(1, 9);
    });
  }

  for (const { bolts, order } of file?.patterns ?? []) {
    test(`the cross pattern of ${bolts}`, () => {
      const ours = tighteningOrder({ layout: 'ring', count: bolts });
      if (order !== null) expect(ours).toEqual(order);
      expect([...ours].sort((a, b) => a - b)).toEqual(Array.from({ length: bolts }, (_, k) => k + 1));
      for (let k = 0; k + 1 < bolts; k += 2) {
        expect(((((ours[k + 1] ?? 0) - (ours[k] ?? 0)) % bolts) + bolts) % bolts).toBe(bolts / 2);
      }
    });
  }
});
