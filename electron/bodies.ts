import { z } from 'zod';
import type { Answer } from '../core/contract/errors.ts';

/** What a window may send, in the same shape over HTTP and over Electron's channels. */
export const callBody = z.strictObject({
  operation: z.string().min(1).max(80),
  input: z.unknown(),
  /** UUIDv7. */
  request: z.string().max(64).optional(),
  /** Epoch milliseconds; the shop takes it in practice only. */
  at: z.number().optional(),
});

export const enterBody = z.strictObject({ person: z.string().max(200), code: z.string().max(200) });

/** The cell that a window has in hand, by the window's own name for it; null: none. */
export const handBody = z.strictObject({ cell: z.string().min(1).max(120).nullable() });

/** What a window may ask before there is a garage: a look at the demo, or a copy. */
export const beginBody = z.discriminatedUnion('what', [
  z.strictObject({ what: z.literal('demo') }),
  z.strictObject({ what: z.literal('play') }),
  z.strictObject({ what: z.literal('stop') }),
  z.strictObject({ what: z.literal('open-demo') }),
  z.strictObject({ what: z.literal('copies') }),
  z.strictObject({ what: z.literal('look'), copy: z.string().min(1).max(4096) }),
  z.strictObject({
    what: z.literal('bring-back'),
    copy: z.string().min(1).max(4096),
    /** The last invoice number that stands on paper; null where none does. */
    lastInvoice: z.int().min(1).max(999_999_999).nullable(),
  }),
]);
export type BeginBody = z.output<typeof beginBody>;

export const paperId = z.string().regex(/^[0-9A-Za-z-]{1,64}$/);

/** What the operation paper.read gives. */
export const paperOutput = z.object({ name: z.string(), base64: z.string() });

/** What entering gives. */
export const enterOutput = z.object({ personId: z.string(), name: z.string(), role: z.string() });

/** Something that was said by nobody the shop knows, or not in our shape. */
export type DoorAnswer = Answer | { readonly ok: false; readonly error: { code: 'turned-away'; why: string } };
