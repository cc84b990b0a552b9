import { type DateReading, readDate } from './read-date.ts';
import { readTime } from './read-time.ts';

/** A wall time 'YYYY-MM-DDTHH:MM' as it was meant; 'no-time' for a day alone. */
export type MomentRead = { readonly wall: string } | { readonly problem: 'no-such-day' | 'no-time' | 'unread' };

/** Reads a day and a time of it as typed: "29.11. 730", "tomorrow 17:00", "2026-11-29T07:30"; a time with a colon alone is today's. */
export function readMoment(text: string, reading: DateReading): MomentRead {
  const bare = text.trim();
  const [, day = '', time = ''] =
    /^(\d{4}-\d{2}-\d{2})T(.*)$/i.exec(bare) ?? /^([^\s,]+)(?:,\s*|\s+)?(.*)$/.exec(bare) ?? [];
  const read = readDate(day, reading);
  if ('problem' in read) {
    const alone = bare.includes(':') ? readTime(bare) : null;
    return alone === null ? { problem: read.problem } : { wall: `${reading.today}T${alone}` };
  }
  if (time === '') return { problem: 'no-time' };
  const at = readTime(time);
  return at === null ? { problem: 'unread' } : { wall: `${read.date}T${at}` };
}
