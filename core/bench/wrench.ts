import { clampLoad, NUT_FACTOR } from '../measure/clamp-load.ts';
import { wrenchSetting } from '../measure/torque-wrench.ts';
import { bothUnits, type Stage } from './stage.ts';

/** A wrench of the shop: its span in thousandths of a newton metre, hand to drive in thousandths of a millimetre. */
export interface Wrench {
  readonly least: number;
  readonly most: number;
  readonly lever: number | null;
  readonly dueOn: string | null;
}

/** Past the day its calibration was due; on that day it still is in date. Civil dates. */
export const isOverdue = ({ dueOn }: Pick<Wrench, 'dueOn'>, today: string): boolean => dueOn !== null && dueOn < today;

/** What a procedure says of a group besides its figures: millimetres and degrees. */
export interface WrenchWork {
  readonly extension: { readonly length: number; readonly angle: number; readonly lever: number | null } | null;
  readonly thread: { readonly diameter: number; readonly nut: keyof typeof NUT_FACTOR } | null;
}

/**
 * A round with all that the bench wants to know of it: both units, what to set on a wrench that carries an extension
 * (none where no lever is known or none is left), an estimate of the clamp load in kilonewtons, and whether the wrench in
 * hand reaches what is to be set. Nothing is rounded: rounding is the screen's.
 */
export function reckonStage(stage: Stage, { extension, thread }: WrenchWork, wrench: Wrench | null) {
  const torque = bothUnits(stage);
  const lever = extension?.lever ?? (wrench?.lever == null ? null : wrench.lever / 1000);
  const set = (target: number): number | null => {
    if (extension === null || lever === null) return null;
    const left = lever + extension.length * Math.cos((extension.angle * Math.PI) / 180);
    return left > 0 ? wrenchSetting(target, lever, extension.length, extension.angle) : null;
  };
  const Nm = torque === null ? null : set(torque.Nm);
  const lbfft = torque === null ? null : set(torque.lbfft);
  const setting = Nm === null || lbfft === null ? null : { Nm, lbfft };
  const toSet = (setting ?? torque)?.Nm ?? null;
  return {
    torque,
    degrees: 'degrees' in stage ? stage.degrees : null,
    setting,
    clampLoad:
      thread === null || torque === null ? null : clampLoad(torque.Nm, thread.diameter, NUT_FACTOR[thread.nut]),
    outsideWrench: wrench !== null && toSet !== null && (toSet * 1000 < wrench.least || toSet * 1000 > wrench.most),
  };
}
