/** Nut factors as published (NASA RP-1228, Fastener Design Manual; figures from memory). */
export const NUT_FACTOR = { dry: 0.2, lubricated: 0.15 } as const;

/**
 * Clamp load of a bolt from its torque, F = T / (K D): torque in newton metres, nominal diameter in millimetres, answer
 * in kilonewtons. An estimate: friction alone moves it by a quarter either way (common practice, no source), so it is
 * shown as a span. Throws RangeError for a factor or a diameter that is not above zero.
 */
export function clampLoad(torqueNm: number, diameterMm: number, nutFactor: number) {
  if (!(nutFactor > 0 && diameterMm > 0)) throw new RangeError('Nut factor and diameter stand above zero');
  const load = torqueNm / (nutFactor * diameterMm);
  return { load, least: load * 0.75, most: load * 1.25 };
}

/** The torque in newton metres that T = K D F asks for a clamp load in kilonewtons. Throws as clampLoad does. */
export function torqueFor(loadKn: number, diameterMm: number, nutFactor: number): number {
  if (!(nutFactor > 0 && diameterMm > 0)) throw new RangeError('Nut factor and diameter stand above zero');
  return nutFactor * diameterMm * loadKn;
}
