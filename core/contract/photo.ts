import { z } from 'zod';
import { act, ask } from './operation.ts';
import { done, id, instant, revision, words } from './scalars.ts';

/** The largest photo that is taken, in bytes. */
export const PHOTO_MOST = 8_000_000;
/** The most pixels that it may have, so that whoever shows it has the memory for it. */
export const PHOTO_MOST_PIXELS = 100_000_000;

/** What a photo is of. A step is named by its job and its number. */
export const photoOf = z.union([
  z.strictObject({ what: z.enum(['car', 'finding', 'order', 'mark']), id }),
  z.strictObject({ what: z.literal('step'), id, step: z.int().min(1).max(200) }),
]);

const kind = z.enum(['jpeg', 'png', 'webp']);

export const photoRow = z.strictObject({
  id,
  orderId: id,
  orderNumber: z.int(),
  of: photoOf,
  kind,
  bytes: z.int(),
  words: z.string(),
  at: instant,
  by: z.string(),
  /** Of whether it is printed and shown. */
  revision,
  printed: z.boolean(),
  takenOut: z.boolean(),
});

/** Pictures of what was found and done. Each file lies once in the shop's folder, named by its content. */
export const photoRoom = {
  /**
   * Keeps a JPEG, PNG or WebP picture of up to 8 MB, known by its content; base64 without a prefix. The same picture of
   * the same thing is kept once: `again`.
   */
  'photo.keep': act(
    'crew',
    z.strictObject({
      orderId: id,
      of: photoOf,
      words: words(200).default(''),
      base64: z.string().min(1).max(16_000_000),
    }),
    z.strictObject({ id, hash: z.string(), again: z.boolean() }),
  ),
  'photo.read': ask(
    'crew',
    z.strictObject({ id }),
    z.strictObject({ id, kind, words: z.string(), at: instant, base64: z.string() }),
  ),
  /** Of one order, or of all visits of a car; oldest first, those taken out too. */
  'photo.list': ask(
    'crew',
    z.union([z.strictObject({ orderId: id }), z.strictObject({ carId: id })]),
    z.strictObject({ rows: z.array(photoRow) }),
  ),
  /** Whether it stands on the papers that show photos. A WebP picture cannot. */
  'photo.print': act('crew', z.strictObject({ id, revision, printed: z.boolean() }), done),
  /** No longer shown; the file stays. */
  'photo.takeOut': act('crew', z.strictObject({ id, revision, takenOut: z.boolean() }), done),
};
