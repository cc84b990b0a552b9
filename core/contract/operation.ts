import type { z } from 'zod';

/** Who may: anyone (nobody need be signed in), crew (anybody with a code), desk (desk and owner), owner. */
export type May = 'anyone' | 'crew' | 'desk' | 'owner';

/** An operation that only reads. */
export function ask<I extends z.ZodType, O extends z.ZodType>(may: May, input: I, output: O) {
  return { kind: 'ask', may, input, output } as const;
}

/** An operation that changes something: one transaction, one line in the trail. */
export function act<I extends z.ZodType, O extends z.ZodType>(may: May, input: I, output: O) {
  return { kind: 'do', may, input, output } as const;
}
