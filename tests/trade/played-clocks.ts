import { z } from 'zod';
import { bayMinutes, type ClockEntry, manMinutes } from '../../core/bench/clock.ts';
import { at } from '../db/practice-shop.ts';
import type { Case } from './case.ts';
import { bookIn, inShop, yes } from './played-shop.ts';

const clock = z.string().regex(/^\d\d:\d\d$/);
const today = (time: string) => at(`2026-03-10T${time}`);
const labour = { kind: 'labour' as const, words: 'Work', quantity: 1000, unitPrice: 0 };

/** A forgotten clock is set aside, holds the invoice, and is put right by a new entry. */
const T21: Case = (given) => {
  const inputs = z.strictObject({ on: clock, corrected_off: clock, close: clock }).parse(given);
  return inShop({}, async (garage) => {
    const { id } = await bookIn(garage);
    const job = await garage.did('Desk', 'job.add', { orderId: id, job: { title: 'Work' }, lines: [labour] });
    await yes(garage, id, [job.id], 0);
    garage.now = today(inputs.on);
    await garage.did('Runa', 'clock.on', { jobId: job.id });
    garage.now = today(inputs.close);
    const forgotten = await garage.did('Odile', 'clock.forgotten', { personId: garage.people.get('Runa') ?? '' });
    const open = await garage.did('Odile', 'order.get', { id });
    if (!open.stops.some(({ what }) => what === 'clock-forgotten'))
      throw new Error('The forgotten clock holds nothing');
    await garage.did('Odile', 'clock.correct', {
      entryId: forgotten.id,
      on: today(inputs.on),
      off: today(inputs.corrected_off),
      jobId: job.id,
      why: 'Forgot to clock off.',
    });
    const after = await garage.did('Odile', 'order.get', { id });
    if (!after.clocks.some((entry) => entry.id === forgotten.id)) throw new Error('The open entry is gone');
    return {
      minutes: after.jobs[0]?.clockedMinutes,
      open_minutes_counted: open.jobs[0]?.clockedMinutes,
      corrections: after.clocks.filter(({ corrects }) => corrects === forgotten.id).length,
    };
  });
};

/** Everybody clocks on and off in the order of the day; clocking on to the next job closes the one before. */
const T22: Case = (given) => {
  const inputs = z.strictObject({ entries: z.array(z.tuple([z.string(), z.int(), clock, clock])) }).parse(given);
  return inShop({}, async (garage) => {
    const { id } = await bookIn(garage);
    const jobs = new Map<number, string>();
    for (const [, number] of inputs.entries) {
      if (jobs.has(number)) continue;
      const added = await garage.did('Desk', 'job.add', {
        orderId: id,
        job: { title: `Job ${number}` },
        lines: [labour],
      });
      jobs.set(number, added.id);
    }
    await yes(garage, id, [...jobs.values()], 0);
    const people = ['Runa', 'Piet', 'Odile', 'Desk'];
    const letters = [...new Set(inputs.entries.map(([letter]) => letter))];
    const name = (letter: string) => people[letters.indexOf(letter)] ?? '';
    const taps = inputs.entries.flatMap(([who, number, on, off]) => {
      const next = inputs.entries.some(([other, , start]) => other === who && start === off);
      const start = { time: on, who: name(who), jobId: jobs.get(number) ?? null };
      return next ? [start] : [start, { time: off, who: name(who), jobId: null }];
    });
    for (const { time, who, jobId } of taps.toSorted((a, b) => a.time.localeCompare(b.time))) {
      garage.now = today(time);
      if (jobId === null) await garage.did(who, 'clock.off', {});
      else await garage.did(who, 'clock.on', { jobId });
    }
    const order = await garage.did('Odile', 'order.get', { id });
    const entries = order.clocks.map(
      ({ personId, jobId, on, off }): ClockEntry => ({ personId, jobId, kind: 'work', on, off }),
    );
    const named = (minutes: ReadonlyMap<string, number>) =>
      Object.fromEntries([...jobs].map(([number, jobId]) => [String(number), minutes.get(jobId) ?? 0]));
    const told = new Map(order.jobs.map((job) => [job.id, job.clockedMinutes]));
    if (JSON.stringify(named(told)) !== JSON.stringify(named(manMinutes(entries))))
      throw new Error('Two sums of hours');
    return { man_min: named(told), bay_min: named(bayMinutes(entries)) };
  });
};

export const playedClocks: Readonly<Record<string, Case>> = { T21, T22 };
