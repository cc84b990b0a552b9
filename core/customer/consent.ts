/** What a customer may be asked to agree to. */
export const CONSENTS = ['reminders', 'photos', 'history'] as const;
export type Consent = (typeof CONSENTS)[number];
/** yes and no were said; unasked: nobody has asked, or the answer was written down by mistake. */
export const CONSENT_ANSWERS = ['yes', 'no', 'unasked'] as const;
export type ConsentAnswer = (typeof CONSENT_ANSWERS)[number];

export interface ConsentSaid {
  readonly what: Consent;
  readonly answer: ConsentAnswer;
}

/** An answer and whether it took back a yes that was given before. */
export interface ConsentStands<R> {
  readonly row: R;
  readonly withdrawn: boolean;
}

/** The answer about one thing that holds, from all that were written down, oldest first; null where there is none. */
export function consentStands<R extends ConsentSaid>(rows: readonly R[], what: Consent): ConsentStands<R> | null {
  const said = rows.filter((row) => row.what === what);
  const row = said.at(-1);
  if (row === undefined) return null;
  return { row, withdrawn: row.answer === 'no' && said.at(-2)?.answer === 'yes' };
}

/** An answer as the customer's own row keeps it. */
export const consentAnswer = (value: boolean | null | undefined): ConsentAnswer =>
  value === true ? 'yes' : value === false ? 'no' : 'unasked';
