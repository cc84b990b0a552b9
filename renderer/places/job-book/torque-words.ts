import { bothUnits } from '../../../core/bench/stage.ts';
import type { Step } from './draft.ts';

type Stages = NonNullable<Step['torque']>['stages'];

const shown = (figure = 0, decimals = 1): string => String(Number(figure.toFixed(decimals)));

/** "30, 60, 85 N·m" or "40 N·m, 90°". */
export function newtonMetres(stages: Stages): string {
  return stages
    .map((stage, at) => {
      if ('degrees' in stage) return `${stage.degrees}°`;
      const next = stages[at + 1];
      const figure = shown(bothUnits(stage)?.Nm);
      return next !== undefined && !('degrees' in next) ? figure : `${figure}\u00a0N·m`;
    })
    .join(', ');
}

/** The same in the other unit, to the nearest pound-force foot: "22, 44, 63 lbf·ft". */
export function poundFeet(stages: Stages): string {
  const figures = stages.map((stage) => ('degrees' in stage ? `${stage.degrees}°` : shown(bothUnits(stage)?.lbfft, 0)));
  return `${figures.join(', ')}\u00a0lbf·ft`;
}
