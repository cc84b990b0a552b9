import { z } from 'zod';
import { CONSENT_ANSWERS, CONSENTS } from '../customer/consent.ts';
import { act, ask } from './operation.ts';
import { amount, civilDate, done, id, instant, revision, words } from './scalars.ts';

/** Two hours of the day at which somebody answers best; minutes since midnight. */
export const bestHours = z.strictObject({ from: z.int(), to: z.int(), answered: z.int(), tries: z.int() });

const orderNamed = z.strictObject({ id, number: z.int() });

/** How a customer said whether something may be done. */
const consentWay = z.enum(['person', 'signed', 'phone', 'message', 'mail', 'letter']);

/** What a customer said to one thing, when and how, and who wrote it down. */
export const consentSaid = z.strictObject({
  id,
  what: z.enum(CONSENTS),
  answer: z.enum(CONSENT_ANSWERS),
  /** unsaid: it came with a change of the whole entry. */
  way: consentWay.or(z.literal('unsaid')),
  /** The day on which they said it. */
  on: civilDate,
  by: z.string(),
  at: instant,
});

export const customerRoom = {
  /** What a customer said to one thing, when and how; a later no takes a yes back. `on` null: today. */
  'customer.consent': act(
    'desk',
    z.strictObject({
      id,
      revision,
      what: z.enum(CONSENTS),
      answer: z.enum(CONSENT_ANSWERS),
      way: consentWay,
      on: civilDate.nullable().default(null),
    }),
    done,
  ),
  /** Customers who may be the one that is being typed: same name, phone or e-mail however written. The likeliest first. */
  'customer.doubles': ask(
    'desk',
    z.strictObject({
      name: words(120).default(''),
      phones: z.array(words(40)).max(2).default([]),
      email: words(254).default(''),
      /** The customer that is being typed, where they are known. */
      exceptId: id.nullable().default(null),
    }),
    z.strictObject({
      rows: z.array(
        z.strictObject({
          id,
          revision,
          name: z.string(),
          phone: z.string(),
          email: z.string(),
          cars: z.array(z.string()),
          lastVisit: instant.nullable(),
          by: z.array(z.enum(['name', 'phone', 'email'])),
        }),
      ),
    }),
  ),
  /**
   * Two entries are one person: cars and open work go over, the past is read together, papers keep the name that they
   * were issued with. Can be taken back.
   */
  'customer.join': act(
    'desk',
    z.strictObject({ fromId: id, fromRevision: revision, intoId: id, intoRevision: revision }),
    z.strictObject({ joinId: id, cars: z.int(), orders: z.int() }),
  ),
  /** Takes a joining back: what went over then, and is still there, returns. */
  'customer.part': act('desk', z.strictObject({ joinId: id }), z.strictObject({ id })),
  /**
   * A car's history as a PDF, oldest visit first. To its owner with the prices of their own visits if wished; to a later
   * owner the work, the dates and the mileage, never a person, a word of theirs or a price. Visits of whoever
   * wished to keep them back are left out and counted.
   */
  'car.history': ask(
    'desk',
    z.strictObject({
      id,
      prices: z.boolean().default(false),
      reader: z.enum(['owner', 'later-owner']).default('owner'),
    }),
    z.strictObject({ name: z.string(), base64: z.string(), visits: z.int(), keptBack: z.int() }),
  ),
  /** When a customer was tried and when they answered, the last twelve months; without a guess where there are few tries. */
  'customer.answers': ask(
    'desk',
    z.strictObject({ id }),
    z.strictObject({
      tries: z.array(
        z.strictObject({
          at: instant,
          /** Minutes since midnight on the shop's wall clock. */
          minute: z.int(),
          way: z.enum(['message', 'phone']),
          answered: z.boolean(),
        }),
      ),
      /** Of all tries; null: too few, or no hours better than others. */
      best: bestHours.nullable(),
      /** Of those by phone alone. */
      bestPhone: bestHours.nullable(),
    }),
  ),
  /** What leaving a car here costs so far: only where it was told at the door, counted from the ready notice. */
  'storage.get': ask(
    'desk',
    z.strictObject({ orderId: id, on: civilDate.nullable().default(null) }),
    z.strictObject({
      told: z.boolean(),
      /** Minor units a calendar day, in the shop's prices; 0 where nothing was told. */
      perDay: amount,
      freeWorkingDays: z.int(),
      /** When it was agreed at the door; null where that was not written down. */
      agreedAt: instant.nullable(),
      /** The day until which it stands on a sheet that has no invoice yet; null where it does not. */
      chargedUntil: civilDate.nullable(),
      /** Whose sheet that is. */
      standsOn: orderNamed.nullable(),
      /** The day until which an invoice charges it; what is said below is without that. */
      invoicedUntil: civilDate.nullable(),
      /** The invoice of the visit is out: what came to be since goes onto an order of its own. */
      ownOrder: z.boolean(),
      /** Of an order that was opened for the storage of a visit: that visit's. */
      visit: orderNamed.nullable(),
      /** The day of the first ready notice that reached the customer, by the contact log. */
      notice: civilDate.nullable(),
      /** Day of collection, or the day asked for. */
      until: civilDate,
      firstCharged: civilDate.nullable(),
      days: z.int(),
      net: amount,
      tax: amount,
      gross: amount,
    }),
  ),
  /**
   * Puts the storage that came to be on the sheet as a fee, or brings the fee there up to the day. What was agreed at the
   * door is its yes, and is recorded as one. Once the invoice is out, what came to be since goes onto an order of its own,
   * which is invoiced like any other. `until` null: today.
   */
  'storage.charge': act(
    'desk',
    z.strictObject({ orderId: id, until: civilDate.nullable().default(null) }),
    z.strictObject({ orderId: id, number: z.int(), jobId: id, decisionId: id, days: z.int(), gross: amount }),
  ),
};
