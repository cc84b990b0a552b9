/** One booking as a calendar shows it. */
export interface CalendarEntry {
  /** Stays the same when the booking is moved, so that the calendar moves it, too. */
  readonly uid: string;
  readonly from: number;
  readonly to: number;
  readonly summary: string;
  readonly description: string;
  readonly cancelled: boolean;
}

const OCTETS = 75;

const escaped = (text: string) =>
  text
    .replaceAll('\\', '\\\\')
    .replaceAll(';', '\\;')
    .replaceAll(',', '\\,')
    .replaceAll(/\r\n|\r|\n/g, '\\n');

/** `20261125T070000Z` */
const utc = (instant: number) => new Date(instant).toISOString().replaceAll(/[-:]|\.\d{3}/g, '');

const octets = (character: string) => {
  const point = character.codePointAt(0) ?? 0;
  return point < 0x80 ? 1 : point < 0x800 ? 2 : point < 0x1_0000 ? 3 : 4;
};

/** A line of at most 75 octets goes on after CRLF and a space; no character is split. */
function folded(line: string): string {
  let out = '';
  let room = OCTETS;
  for (const character of line) {
    const size = octets(character);
    if (size > room) {
      out += '\r\n ';
      room = OCTETS - 1;
    }
    out += character;
    room -= size;
  }
  return out;
}

/**
 * Bookings as a calendar file (RFC 5545), times in UTC so that no zone table is needed. `now` is the instant of making.
 * Read back by ical.js in tests.
 */
export function calendarFile(entries: readonly CalendarEntry[], now: number): string {
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Crownwheel//Bookings//EN',
    ...entries.flatMap(({ uid, from, to, summary, description, cancelled }) => [
      'BEGIN:VEVENT',
      `UID:${escaped(uid)}`,
      `DTSTAMP:${utc(now)}`,
      `DTSTART:${utc(from)}`,
      `DTEND:${utc(to)}`,
      `SUMMARY:${escaped(summary)}`,
      ...(description === '' ? [] : [`DESCRIPTION:${escaped(description)}`]),
      `STATUS:${cancelled ? 'CANCELLED' : 'CONFIRMED'}`,
      'END:VEVENT',
    ]),
    'END:VCALENDAR',
  ];
  return `${lines.map(folded).join('\r\n')}\r\n`;
}
