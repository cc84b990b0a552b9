/**
 * Factors of NIST SP 811 (2008) appendix B.8 and of the exact definitions behind them: inch 25.4 mm, pound 0.45359237 kg,
 * standard gravity 9.80665 m/s², US gallon 231 cubic inches, imperial gallon 4.54609 L.
 */
const POUND_FORCE = 0.45359237 * 9.80665;
const FOOT = 0.3048;
const INCH = 0.0254;
const US_GALLON = 3.785411784;
const IMPERIAL_GALLON = 4.54609;
/** Kilopascals of a pound-force per square inch. */
const PSI = POUND_FORCE / (INCH * INCH) / 1000;

/** How much of the first unit of its kind (N·m, L, mm, kg, kPa, kW) one of each unit is. */
export const UNITS = {
  torque: {
    N·m: 1,
    lbf·ft: POUND_FORCE * FOOT,
    lbf·in: POUND_FORCE * INCH,
    kgf·m: 9.80665,
    kgf·cm: 0.0980665,
  },
  volume: {
    L: 1,
    mL: 0.001,
    'US gal': US_GALLON,
    'US qt': US_GALLON / 4,
    'US pt': US_GALLON / 8,
    'US fl oz': US_GALLON / 128,
    'imp gal': IMPERIAL_GALLON,
    'imp qt': IMPERIAL_GALLON / 4,
    'imp fl oz': IMPERIAL_GALLON / 160,
  },
  length: { mm: 1, in: 25.4, m: 1000, km: 1_000_000, mi: 1_609_344 },
  mass: { kg: 1, lb: 0.45359237 },
  pressure: { kPa: 1, bar: 100, psi: PSI, atm: 101.325, inHg: 3.38638864 },
  power: { kW: 1, hp: (POUND_FORCE * FOOT * 550) / 1000, PS: 0.73549875 },
} as const;

export type Measure = keyof typeof UNITS;
export type UnitOf<M extends Measure> = keyof (typeof UNITS)[M];

/** Converts a value between two units of one measure. Not rounded: rounding is the screen's. */
export function convert<M extends Measure>(measure: M, value: number, from: UnitOf<M>, to: UnitOf<M>): number {
  const factors = UNITS[measure] as Readonly<Record<PropertyKey, number>>;
  return (value * (factors[from] ?? Number.NaN)) / (factors[to] ?? Number.NaN);
}

/** Degrees Fahrenheit as degrees Celsius: (F - 32) / 1.8. */
export function celsius(fahrenheit: number): number {
  return (fahrenheit - 32) / 1.8;
}
