import { z } from 'zod';
import { act, ask } from './operation.ts';
import { id, instant, needed, price, revision, words } from './scalars.ts';

/**
 * What a shop has several of. Each list is saved whole, in its order, on the shop's own revision; a row without an id is
 * new. None ever goes, since bookings and papers name them.
 */
export const shopListsRoom = {
  'shop.rates': act(
    'owner',
    z.strictObject({
      revision,
      rates: z
        .array(z.strictObject({ id: id.nullable(), name: needed(60), price, usual: z.boolean() }))
        .min(1)
        .max(12)
        .refine((all) => all.filter((rate) => rate.usual).length === 1, { error: 'one-usual' }),
    }),
    z.strictObject({ revision }),
  ),
  'shop.bays': act(
    'owner',
    z.strictObject({
      revision,
      bays: z.array(z.strictObject({ id: id.nullable(), name: needed(40), words: words(60) })).max(12),
    }),
    z.strictObject({ revision }),
  ),
  /** The copies that lie in the shop's own folder, newest first. */
  'care.copies': ask(
    'owner',
    z.strictObject({}),
    z.strictObject({
      copies: z.array(
        z.strictObject({
          name: z.string(),
          /** When its file was written. */
          at: instant,
          bytes: z.int(),
        }),
      ),
    }),
  ),
  /**
   * Makes a checked copy now, while work goes on: into the shop's own folder, or with papers and photos into the folder
   * that is named (a stick). Nothing in the shop changes by it.
   */
  'care.copy': ask(
    'owner',
    z.strictObject({ to: words(400).default('') }),
    z.strictObject({
      name: z.string(),
      /** Where it lies. */
      path: z.string(),
      /** The trail's last number in it. */
      trail: z.int().nullable(),
      bytes: z.int(),
    }),
  ),
};
