/** What the last word on a step says of who did it. */
export interface StepSigned {
  readonly second: '' | 'looks' | 'holds' | 'signs' | 'does it';
  readonly state: 'open' | 'done' | 'not-needed' | 'failed';
  readonly byId: string | null;
  readonly secondId: string | null;
}

/** Who did the work of these steps; a step that is another person's by its nature makes nobody a doer. */
export function doersOf(steps: readonly StepSigned[]): ReadonlySet<string> {
  return new Set(
    steps.flatMap(({ second, state, byId }) =>
      state === 'done' && second !== 'does it' && byId !== null ? [byId] : [],
    ),
  );
}

/**
 * Whether a step still lacks the person that it wants besides the one who did the work (common practice, no source).
 * `signs`: somebody else has signed. `does it`: somebody who did none of the work has done it. Looking and holding are
 * told to whoever works and asked of nobody.
 */
export function lacksOther(step: StepSigned, doers: ReadonlySet<string>): boolean {
  if (step.state === 'not-needed' || (step.second !== 'signs' && step.second !== 'does it')) return false;
  if (step.state !== 'done') return true;
  if (step.second === 'signs') return step.secondId === null;
  return ![step.byId, step.secondId].some((id) => id !== null && !doers.has(id));
}
