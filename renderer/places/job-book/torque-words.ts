import { convert } from '../../../core/measure/unit.ts';
import type { Step } from './draft.ts';

type Stages = NonNullable<Step['torque']>['stages'];

/** "30, 60, 85 N·m" or "40 N·m, 90°". */
export function newtonMetres(stages: Stages): string {
  return stages
    .map((stage, at) => {
      if ('degrees' in stage) return `${stage.degrees}°`;
      const next = stages[at + 1];
      return next !== undefined && 'Nm' in next ? String(stage.Nm) : `${stage.Nm}\u00a0N·m`;
    })
    .join(', ');
}

/** The same in the other unit, to the nearest pound-force foot: "22, 44, 63 lbf·ft". */
export function poundFeet(stages: Stages): string {
  const figures = stages.map((stage) =>
    'degrees' in stage ? `${stage.degrees}°` : String(Math.round(convert('torque', stage.Nm, 'N·m', 'lbf·ft'))),
  );
  return `${figures.join(', ')}\u00a0lbf·ft`;
}
