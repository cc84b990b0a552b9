import { weekday } from '../core/time/civil.ts';
import type { Context, Settings } from './context.ts';
import { kept } from './kept.ts';
import { settingsOf } from './people.ts';
import type { PersonRow } from './tables.ts';

/** What a mechanic is there for on a working day, where nobody has said: common practice, no source. Thousandths of an hour. */
const USUAL_DAY = 8000;

const MINUTE_THOUSANDTHS = 1000 / 60;
const minutesOf = (wall: string) => Number(wall.slice(0, 2)) * 60 + Number(wall.slice(3));

/** Hours that the garage is open on a day, thousandths. */
export function openHours(settings: Settings, day: string): number {
  if (!settings.workingWeekdays.includes(weekday(day))) return 0;
  const minutes = minutesOf(settings.planCloses) - minutesOf(settings.planOpens);
  return Math.max(0, Math.round(minutes * MINUTE_THOUSANDTHS));
}

/** Hours that a person is there on a day by their week, thousandths; guessed where they have none. */
export function hoursOn(settings: Settings, person: Pick<PersonRow, 'week'>, day: string): number {
  if (person.week !== null) return (JSON.parse(person.week) as number[])[weekday(day) - 1] ?? 0;
  return Math.min(USUAL_DAY, openHours(settings, day));
}

const absencesOn = kept((tx: Context['tx'], { day }: { day: string }) =>
  tx
    .selectFrom('absence')
    .innerJoin('person', 'person.id', 'absence.person_id')
    .select(['person_id', 'hours', 'week'])
    .where('day', '=', day)
    .where('taken_out', '=', 0),
);

/** Who is away for the whole of today: nothing that was given to them is done by them. */
export async function awayToday(context: Context): Promise<ReadonlySet<string>> {
  const settings = settingsOf(context);
  const left = new Map<string, number>();
  for (const { person_id: person, hours, week } of await absencesOn(context.tx, { day: context.today }))
    left.set(person, (left.get(person) ?? hoursOn(settings, { week }, context.today)) - hours);
  return new Set([...left].filter(([, hours]) => hours <= 0).map(([person]) => person));
}
