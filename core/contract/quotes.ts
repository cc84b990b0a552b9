import { z } from 'zod';
import { ask } from './operation.ts';
import { amount, id, instant, quantity } from './scalars.ts';

/** An issued quote in figures: what each line and job came to in that version. */
export const quoteFigures = z.strictObject({
  paperId: id,
  number: z.int(),
  version: z.int(),
  issuedAt: instant,
  jobs: z.array(
    z.strictObject({
      jobId: id,
      amount,
      lines: z.array(
        z.strictObject({
          lineId: id,
          /** As the line is called now, or was when it was taken out. */
          words: z.string(),
          unit: z.string(),
          quantity,
          amount,
        }),
      ),
    }),
  ),
  supplies: amount,
  wasteFee: amount,
  discount: amount,
  tax: amount,
  gross: amount,
});

export const quotesRoom = {
  /** The versions of an order's quote, oldest first; empty for whoever may not see prices. */
  'quote.list': ask('crew', z.strictObject({ orderId: id }), z.strictObject({ quotes: z.array(quoteFigures) })),
};
