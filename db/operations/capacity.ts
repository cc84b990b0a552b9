import { hoursFree } from '../../core/order/capacity.ts';
import { type CalendarEntry, calendarFile } from '../../core/paper/calendar-file.ts';
import { addDays, daysBetween } from '../../core/time/civil.ts';
import { wallToInstant } from '../../core/time/instant.ts';
import { bookedBetween, internalBetween } from '../booked.ts';
import type { Context, Handlers } from '../context.ts';
import { newId } from '../id.ts';
import { settingsOf } from '../people.ts';
import { hoursOn, openHours } from '../presence.ts';
import { badInput, notFound } from '../refusal.ts';

/** No more days than these are looked at together. */
const MOST_DAYS = 120;
/** The days of a span, both ends in it. Throws bad-input for one that ends before it begins or is too long. */
function daysOf(from: string, to: string): string[] {
  const count = daysBetween(from, to) + 1;
  if (count < 1) throw badInput('to', 'before-from');
  if (count > MOST_DAYS) throw badInput('to', 'too-much', { most: MOST_DAYS });
  return Array.from({ length: count }, (_, index) => addDays(from, index));
}

/** Who works on cars: mechanics, and whoever else has a week of their own. */
async function workers(context: Context) {
  const rows = await context.tx.selectFrom('person').selectAll().where('active', '=', 1).orderBy('name').execute();
  return rows.filter((row) => row.role === 'mechanic' || row.week !== null);
}

const absencesBetween = (context: Context, from: string, to: string) =>
  context.tx
    .selectFrom('absence')
    .selectAll()
    .where('day', '>=', from)
    .where('day', '<=', to)
    .where('taken_out', '=', 0)
    .orderBy('id')
    .execute();

export const capacityHandlers: Handlers = {
  'booking.capacity': async ({ from, to }, context) => {
    const settings = settingsOf(context);
    const days = daysOf(from, to);
    const people = await workers(context);
    const away = await absencesBetween(context, from, to);
    const bays = await context.tx.selectFrom('bay').select('id').orderBy('place').execute();
    const booked = [
      ...(await bookedBetween(context, from, to)).filter((row) => row.counts),
      ...(await internalBetween(context, from, to)),
    ];
    return {
      shareBp: settings.plannedShareBp,
      days: days.map((day) => {
        const mine = booked.filter((row) => row.day === day);
        const hoursOf = (rows: typeof mine) => rows.reduce((sum, row) => sum + row.hours, 0);
        const there = people.map((person) => {
          const hours = hoursOn(settings, person, day);
          const absences = away.filter((row) => row.person_id === person.id && row.day === day);
          return {
            personId: person.id,
            name: person.name,
            hours,
            guessed: person.week === null,
            present: Math.max(0, hours - absences.reduce((sum, row) => sum + row.hours, 0)),
            booked: hoursOf(mine.filter((row) => row.personId === person.id)),
            absences: absences.map((row) => ({ id: row.id, hours: row.hours, words: row.words })),
          };
        });
        const present = there.map((one) => one.present);
        // A bay that is kept takes hours of work only where somebody of the garage is to do it.
        const worked = mine.filter((row) => 'orderId' in row || row.personId !== null);
        const load = { present, shareBp: settings.plannedShareBp, booked: worked.map((row) => row.hours) };
        const open = openHours(settings, day);
        return {
          day,
          working: open > 0,
          present: present.reduce((sum, hours) => sum + hours, 0),
          planned: hoursFree({ ...load, booked: [] }),
          booked: hoursOf(worked),
          free: hoursFree(load),
          people: there,
          bays: bays.map((bay) => {
            const taken = hoursOf(mine.filter((row) => row.bayId === bay.id));
            return { bayId: bay.id, open, booked: taken, free: open - taken };
          }),
        };
      }),
    };
  },
  'booking.calendar': async ({ from, to }, context) => {
    daysOf(from, to);
    const { zone } = settingsOf(context);
    const entry = (
      row: { day: string; from: string; hours: number; whole: { day: string } },
      words: Pick<CalendarEntry, 'uid' | 'summary' | 'description' | 'cancelled'>,
    ): CalendarEntry => {
      const begins = wallToInstant(`${row.day}T${row.from}`, zone);
      // A calendar tells entries apart by their name; each day of a long booking is one.
      const uid = row.day === row.whole.day ? words.uid : `${row.day}-${words.uid}`;
      return { ...words, uid, from: begins, to: begins + row.hours * 3600 };
    };
    const entries = [
      ...(await bookedBetween(context, from, to)).map((row) =>
        entry(row, {
          uid: `${row.bookingId}@crownwheel`,
          summary: `${row.plate} ${row.car}`.trim(),
          description: [`${row.number} ${row.customer}`, row.bay, row.person, row.complaint]
            .filter((text) => text !== '')
            .join('\n'),
          cancelled: !row.counts,
        }),
      ),
      ...(await internalBetween(context, from, to)).map((row) =>
        entry(row, {
          uid: `${row.id}@crownwheel`,
          summary: row.words,
          description: [row.bay, row.person].filter((text) => text !== '').join('\n'),
          cancelled: false,
        }),
      ),
    ];
    return {
      name: from === to ? `${from}.ics` : `${from} ${to}.ics`,
      text: calendarFile(entries, context.now),
      count: entries.length,
    };
  },
  'absence.add': async ({ personId, from, to, hours, words }, context) => {
    const person = await context.tx.selectFrom('person').selectAll().where('id', '=', personId).executeTakeFirst();
    if (!person) throw notFound('person', personId);
    const settings = settingsOf(context);
    const ids: string[] = [];
    for (const day of daysOf(from, to)) {
      const away = hours ?? hoursOn(settings, person, day);
      if (away === 0) continue;
      const id = newId();
      await context.write.insert('absence', { id, person_id: personId, day, hours: away, words, taken_out: 0 });
      ids.push(id);
    }
    return { ids };
  },
  'absence.takeOut': async ({ id }, context) => {
    const row = await context.tx.selectFrom('absence').select('taken_out').where('id', '=', id).executeTakeFirst();
    if (!row || row.taken_out === 1) throw notFound('absence', id);
    await context.write.update('absence', id, { taken_out: 1 });
    return { id };
  },
};
