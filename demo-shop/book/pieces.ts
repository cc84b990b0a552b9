import type { InputOf } from '../../core/contract/index.ts';

export type BookJob = InputOf<'jobBook.save'>['content'];
type Step = BookJob['steps'][number];
type Line = BookJob['lines'][number];

/** Every figure of these jobs is invented. */
export const INVENTED = 'invented for practice, no figure of a real car: write the maker’s manual and its page here';
export const FIRST = 'The maker’s manual, local rules and licensed people come first.';

export const numbered = (steps: readonly Omit<Step, 'n'>[]): Step[] =>
  steps.map((step, at) => ({ n: at + 1, ...step }));

/** A new part, so many whole ones, its price and what it costs us in cents. */
export const fresh = (words: string, count: number, unitPrice: number, unitCost: number): Line => ({
  ...{ kind: 'part', words, condition: 'new' },
  ...{ quantity: count * 1000, unitPrice, unitCost },
});
export const oil = (words: string, millilitres: number, unitPrice: number, unitCost: number): Line => ({
  ...{ kind: 'fluid', words, quantity: millilitres, unit: 'L' },
  ...{ unitPrice, unitCost },
});
export const ring = (what: string, count: number, newtonMetres: readonly number[], sides = 1): Step['torque'] => ({
  ...{ what, pattern: 'ring', count, sides },
  stages: newtonMetres.map((Nm) => ({ Nm })),
});
export const wheels = (Nm: number): Omit<Step, 'n'> => ({
  do: 'Wheels on, crosswise, car on the floor',
  second: 'signs',
  torque: ring('Wheel bolts', 5, [Nm], 2),
  recheckCard: true,
});
export const LIFT: Omit<Step, 'n'> = {
  do: 'Lift on the maker’s points, rock test, arms locked',
  second: 'looks',
  hold: 'the car rocks: down again',
};
export const DRIVE: Omit<Step, 'n'> = {
  do: 'Test drive by the other person; leaks, noise, heat',
  second: 'does it',
  hold: 'noise or heat: the car does not leave',
};
export const AGAIN: NonNullable<BookJob['after']>[number] = {
  ...{ source: 'wheel-recheck', words: 'Tighten the wheels again', days: 14, distance: 50 },
};
