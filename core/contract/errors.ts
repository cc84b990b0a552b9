import type { HeldReason } from './held.ts';

/** The closed set of errors. Sentences for them live with the words of each door. */
export type ShopError =
  | {
      readonly code: 'bad-input';
      readonly fields: readonly {
        readonly path: string;
        readonly problem: string;
        readonly with?: Readonly<Record<string, string | number>>;
      }[];
    }
  | { readonly code: 'not-found'; readonly what: string; readonly id: string }
  | {
      readonly code: 'changed-meanwhile';
      readonly what: string;
      readonly id: string;
      readonly revision: number;
      readonly now: unknown;
      readonly yours: unknown;
    }
  | { readonly code: 'held'; readonly reasons: readonly HeldReason[] }
  | { readonly code: 'not-allowed'; readonly why: string; readonly with?: Readonly<Record<string, string | number>> }
  | { readonly code: 'period-locked'; readonly lockedTo: string }
  | { readonly code: 'already-set-up' }
  | { readonly code: 'not-set-up' }
  | { readonly code: 'disk-full' }
  | { readonly code: 'read-only' }
  | { readonly code: 'damaged'; readonly detail: string }
  | { readonly code: 'unknown-operation'; readonly operation: string }
  | { readonly code: 'unknown-fault'; readonly id: string };

export type Answer<O = unknown> =
  | { readonly ok: true; readonly output: O }
  | { readonly ok: false; readonly error: ShopError };
