import { z } from 'zod';
import { act, ask } from './operation.ts';
import { amount, id, instant, needed } from './scalars.ts';

/** What an account owes and will owe, minor units, tax in: open invoices, said yes to and not billed, and this order. */
export const creditFigures = z.strictObject({
  limit: amount,
  openInvoices: amount,
  authorised: amount,
  /** What this order's yes adds. */
  mine: amount,
  exposure: amount,
  /** By how much it is over the limit; 0 when inside. */
  over: amount,
});

/** Work that the owner let go on over the limit: once, by name. */
export const creditPass = z.strictObject({ by: z.string(), at: instant, reason: z.string() });

/** Where an order stands against the limit of the account that pays for it. */
export const orderCredit = z.strictObject({
  accountId: id,
  name: z.string(),
  /** Over the limit and not let pass: no clock, no parts. */
  held: z.boolean(),
  /** null without the right to see prices. */
  figures: creditFigures.nullable(),
  pass: creditPass.nullable(),
});

export const accountRoom = {
  /** An account against its limit: what is owed, what was said yes to and is not billed, what is about to be asked. */
  'customer.credit': ask(
    'desk',
    z.strictObject({ id }),
    z.strictObject({
      /** null: no limit is set. */
      limit: amount.nullable(),
      openInvoices: amount,
      authorised: amount,
      /** Priced on open orders and not said yes to. */
      asked: amount,
      /** By how much owed, said yes to and asked are over the limit together. */
      over: amount,
      orders: z.array(
        z.strictObject({
          orderId: id,
          number: z.int(),
          upTo: amount,
          asked: amount,
          held: z.boolean(),
          pass: creditPass.nullable(),
        }),
      ),
    }),
  ),
  /** Lets an order over its account's limit go on: once, up to the yes that it has now, with the owner's name and reason. */
  'credit.letPass': act('owner', z.strictObject({ orderId: id, reason: needed(300) }), z.strictObject({ id })),
};
