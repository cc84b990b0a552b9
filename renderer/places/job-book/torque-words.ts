import { bothUnits, type Stage } from '../../../core/bench/stage.ts';
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

/** The unit that a round was not entered in: "22 lbf·ft" for 30 N·m; '' for an angle and for a pair as printed. */
export function otherUnit(stage: Stage): string {
  const both = bothUnits(stage);
  if (both === null || ('Nm' in stage && 'lbfft' in stage)) return '';
  return 'Nm' in stage ? `${shown(both.lbfft, 0)}\u00a0lbf·ft` : `${shown(both.Nm)}\u00a0N·m`;
}
