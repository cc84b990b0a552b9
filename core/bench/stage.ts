import { convert } from '../measure/unit.ts';

/** One round of a group as its source gives it: in one unit, as a pair printed in both, or as an angle. */
export type Stage =
  | { readonly Nm: number }
  | { readonly lbfft: number }
  | { readonly Nm: number; readonly lbfft: number }
  | { readonly degrees: number };

/**
 * The torque of a round in both units, not rounded; null for an angle. A pair that is printed in both stays as printed:
 * converting it back would give a figure that stands in no manual.
 */
export function bothUnits(stage: Stage): { readonly Nm: number; readonly lbfft: number } | null {
  if ('Nm' in stage && 'lbfft' in stage) return { Nm: stage.Nm, lbfft: stage.lbfft };
  if ('Nm' in stage) return { Nm: stage.Nm, lbfft: convert('torque', stage.Nm, 'N·m', 'lbf·ft') };
  if ('lbfft' in stage) return { Nm: convert('torque', stage.lbfft, 'lbf·ft', 'N·m'), lbfft: stage.lbfft };
  return null;
}

/** A round as its source gives it: “40 N·m”, “30 lbf·ft”, “40 N·m (30 lbf·ft)”, “90°”. */
export function stageText(stage: Stage): string {
  if ('degrees' in stage) return `${stage.degrees}°`;
  if (!('Nm' in stage)) return `${stage.lbfft} lbf·ft`;
  return 'lbfft' in stage ? `${stage.Nm} N·m (${stage.lbfft} lbf·ft)` : `${stage.Nm} N·m`;
}
