import { z } from 'zod';
import { wallToInstant } from '../../core/time/instant.ts';
import type { PracticeShop } from '../db/practice-shop.ts';
import { type Case, mapped } from './case.ts';
import { bookIn, ITEMISED, inShop, oneTax, yes } from './played-shop.ts';

const whole = z.int();
const wall = z.string().regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d$/);
const clock = z.string().regex(/^\d\d:\d\d$/);
const fold = z.literal([0, 1]);
const span = z.strictObject({ on: wall, off: wall, on_fold: fold.default(0), off_fold: fold.default(0) });

interface Hours {
  readonly h_x100: number;
  readonly overlap_x100: number;
}

/** Jobs of one visit, each with its book hours and what it shares with the job in place `primary` (null: with none). */
async function labourOf(garage: PracticeShop, rate: number, hours: readonly Hours[], primary: number | null) {
  const { id } = await bookIn(garage);
  const ids: string[] = [];
  const add = async (at: number, overlapJobId: string | null) => {
    const { h_x100, overlap_x100 } = hours[at] ?? { h_x100: 0, overlap_x100: 0 };
    const book = { billing: 'book' as const, book: h_x100 * 10, overlap: overlap_x100 * 10, overlapJobId };
    const line = { kind: 'labour' as const, words: 'Work', unit: 'h', quantity: 0, unitPrice: rate, ...book };
    ids[at] = (await garage.did('Desk', 'job.add', { orderId: id, job: { title: `Job ${at}` }, lines: [line] })).id;
  };
  if (primary !== null) await add(primary, null);
  for (const at of hours.keys()) if (at !== primary) await add(at, primary === null ? null : (ids[primary] ?? null));
  const read = async () => {
    const { jobs, sums } = await garage.did('Desk', 'order.get', { id });
    const charged = ids.map((jobId) => (jobs.find((job) => job.id === jobId)?.lines[0]?.charged ?? 0) / 10);
    return { charged, price: sums?.labour };
  };
  return { id, ids, read };
}

const add = (figures: readonly number[]) => figures.reduce((all, one) => all + one, 0);

/** The jobs on one sheet; then apart; then the primary is declined. */
const T07: Case = mapped(
  z.strictObject({
    rate: whole,
    jobs: z.array(z.strictObject({ h_x100: whole, overlap_x100: whole, primary: z.boolean().optional() })),
  }),
  ({ rate, jobs }) =>
    inShop({ supplies: ITEMISED, taxes: oneTax(0) }, async (garage) => {
      const primary = jobs.findIndex((job) => job.primary === true);
      const shared = await labourOf(garage, rate, jobs, primary);
      const together = await shared.read();
      const apart = await (await labourOf(garage, rate, jobs, null)).read();
      await garage.did('Desk', 'decision.record', {
        ...{ orderId: shared.id, jobs: [{ jobId: shared.ids[primary] ?? '', answer: 'no' }], upTo: null },
        ...{ spoken: { name: 'Ilse Vandermeer', role: 'customer' }, way: 'person' },
      });
      const declined = await shared.read();
      const without = add(declined.charged.filter((_, at) => at !== primary));
      if (declined.price !== Math.round((without * rate) / 100)) throw new Error('Hours and price are not one');
      return {
        billed_h_x100: together.charged,
        total_h_x100: add(together.charged),
        price: together.price,
        separate_price: apart.price,
        without_primary_h_x100: without,
      };
    }),
);

type Tap = readonly [instant: number, what: 'on' | 'break' | 'off'];

/** Somebody clocks on to a job and off; minutes of the job, and thousandths of an hour, as the shop tells them. */
const clocked = (taps: readonly Tap[], zone = 'UTC') =>
  inShop({ zone }, async (garage) => {
    const { id } = await bookIn(garage);
    const work = { kind: 'labour' as const, words: 'Work', quantity: 1000, unitPrice: 0 };
    const { id: jobId } = await garage.did('Desk', 'job.add', { orderId: id, job: { title: 'Work' }, lines: [work] });
    await yes(garage, id, [jobId], 0);
    for (const [instant, what] of taps) {
      garage.now = instant;
      if (what === 'off') await garage.did('Runa', 'clock.off', {});
      else await garage.did('Runa', 'clock.on', what === 'on' ? { jobId } : { jobId: null, kind: 'break' });
    }
    const { jobs } = await garage.did('Desk', 'order.get', { id });
    const { hours } = await garage.did('Desk', 'closeOut.get', { orderId: id });
    return { minutes: jobs[0]?.clockedMinutes ?? 0, hours: hours.clocked };
  });

const minutesOf = async (zone: string, { on, off, on_fold, off_fold }: z.output<typeof span>) => {
  const [from, until] = [wallToInstant(on, zone, on_fold), wallToInstant(off, zone, off_fold)];
  return (
    await clocked(
      [
        [from, 'on'],
        [until, 'off'],
      ],
      zone,
    )
  ).minutes;
};

/** From one stretch to the next the clock runs as a break. */
const T17: Case = mapped(z.strictObject({ spans: z.array(z.tuple([clock, clock])).min(1) }), async ({ spans }) => {
  const at = (time: string) => wallToInstant(`2026-03-10T${time}`, 'UTC');
  const taps = spans.flatMap(([on, off], place): Tap[] => [
    [at(on), 'on'],
    [at(off), place === spans.length - 1 ? 'off' : 'break'],
  ]);
  const { minutes, hours } = await clocked(taps);
  return { minutes, hours_x100: Math.round(hours / 10), hours_x10: Math.round(hours / 100) };
});

const T19: Case = mapped(z.strictObject({ zone: z.string(), on: wall, off: wall }), async ({ zone, ...one }) => ({
  minutes: await minutesOf(zone, span.parse(one)),
}));

const T20: Case = mapped(z.strictObject({ zone: z.string(), a: span, b: span }), async ({ zone, a, b }) => ({
  a_minutes: await minutesOf(zone, a),
  b_minutes: await minutesOf(zone, b),
}));

export const playedLabour: Readonly<Record<string, Case>> = { T07, T17, T19, T20 };
