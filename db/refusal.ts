import type { ShopError } from '../core/contract/errors.ts';
import type { HeldReason, HeldWhat, HeldWith } from '../core/contract/held.ts';

/** Thrown inside an operation; the dispatcher rolls the transaction back and answers with the error. */
export class Refusal extends Error {
  readonly error: ShopError;
  constructor(error: ShopError) {
    super(error.code);
    this.error = error;
  }
}

export const notFound = (what: string, id: string) => new Refusal({ code: 'not-found', what, id });

export const badInput = (path: string, problem: string, figures?: Record<string, string | number>) =>
  new Refusal({ code: 'bad-input', fields: [{ path, problem, ...(figures ? { with: figures } : {}) }] });

export const notAllowed = (why: string, figures?: Record<string, string | number>) =>
  new Refusal({ code: 'not-allowed', why, ...(figures ? { with: figures } : {}) });

/** A reason with the figures that belong to it. */
type Reason = { readonly [W in HeldWhat]: { readonly what: W; readonly with: HeldWith<W> } }[HeldWhat];

export const held = (reasons: readonly Reason[]) => new Refusal({ code: 'held', reasons });

/** Held by what stands before an invoice. */
export const heldBy = (stops: readonly HeldReason[]) => new Refusal({ code: 'held', reasons: stops });
