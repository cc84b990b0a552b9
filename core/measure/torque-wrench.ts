/**
 * What to set on a torque wrench that carries an extension: target x L / (L + E cos a), with L from hand to drive and
 * E the extension, both in one unit, and a the angle between them in degrees (0 straight out, 180 folded back).
 * Published in workshop references on torque wrench extensions. The answer is in the target's unit.
 * Throws RangeError when the lever left is not above zero.
 */
export function wrenchSetting(target: number, wrench: number, extension: number, angle: number): number {
  const lever = wrench + extension * Math.cos((angle * Math.PI) / 180);
  if (!(wrench > 0 && lever > 0)) throw new RangeError('No lever left');
  return (target * wrench) / lever;
}
