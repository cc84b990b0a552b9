import { z } from 'zod';
import { basisPoints, civilDate, needed, price, words } from './scalars.ts';

/** Where a setting touches law: the owner's own value, where it is from, when it was checked. */
export const lawNote = { source: words(300), checkedOn: civilDate.nullable() };

/** Basis points on top of a cost, up to eleven times as much. */
const markup = z.int().min(0).max(100_000);

/** Each band begins where the one before ends; the last takes whatever costs more. */
const rising = (bands: readonly { readonly upTo: number | null }[]) =>
  bands.every(({ upTo }, at) => {
    const before = bands[at - 1]?.upTo ?? -1;
    return at === bands.length - 1 ? upTo === null : upTo !== null && upTo > before;
  });

/** Settings that a sheet is reckoned with. Each has a default under which a shop from before reckons as it did. */
export const sheetSettings = {
  /** A fee once an order for getting rid of waste (core/money/waste-fee.ts); null: none. */
  wasteFee: z
    .strictObject({ amount: price, words: needed(60), when: z.enum(['charged', 'part-or-fluid']), ...lawNote })
    .nullable()
    .default(null),
  /** How clocked time is brought to billed hours: steps in thousandths of an hour (core/order/labour.ts). */
  billing: z
    .strictObject({ step: z.int().min(10).max(1000), way: z.enum(['nearest', 'up']) })
    .default({ step: 100, way: 'nearest' }),
  /** Bands of cost, each with what goes on top; a guard keeps a dearer thing from being offered cheaper. null: nothing is offered. */
  partsMarkup: z
    .strictObject({
      bands: z
        .array(z.strictObject({ upTo: price.nullable(), bp: markup }))
        .min(1)
        .max(12)
        .refine(rising, { error: 'bands-not-rising' }),
      guard: z.boolean(),
    })
    .nullable()
    .default(null),
  /** Outside work: its cost and a share of it, at most the limit on top; null: nothing is offered. */
  outsideMarkup: z.strictObject({ bp: markup, limit: price.nullable() }).nullable().default(null),
  /** How a charge on an old unit is taxed (core/money/line.ts, CoreTax); `bp` counts for a share of the exchange price alone. */
  coreTax: z
    .strictObject({
      way: z.enum(['refunded', 'kept', 'kept-on-new', 'none', 'share']),
      bp: basisPoints,
      ...lawNote,
    })
    .default({ way: 'refunded', bp: 1000, source: '', checkedOn: null }),
};
