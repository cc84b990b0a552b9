import fc from 'fast-check';
import ICAL from 'ical.js';
import { expect, test } from 'vitest';
import { calendarFile } from '../../core/paper/calendar-file.ts';

/** What ical.js, an independent reader, finds in a file. */
function readBack(file: string) {
  return new ICAL.Component(ICAL.parse(file)).getAllSubcomponents('vevent').map((each) => {
    const event = new ICAL.Event(each);
    return {
      uid: event.uid,
      from: event.startDate.toJSDate().getTime(),
      to: event.endDate.toJSDate().getTime(),
      summary: event.summary,
      description: event.description ?? '',
      cancelled: each.getFirstPropertyValue('status') === 'CANCELLED',
    };
  });
}

const NOW = Date.UTC(2026, 10, 25, 7);
const hard =
  'Brought in: whine on over-run; "new plug, crush washer" \\ 75W-90 — Öl prüfen, Geräusch bei 60–80 km/h; zweite Zeile\nline two';

test('a hard text comes back as it went in', () => {
  const entry = { uid: 'b-1', from: NOW, to: NOW + 3_600_000, summary: hard, description: hard, cancelled: false };
  expect(readBack(calendarFile([entry], NOW))).toEqual([entry]);
});

test('no line is over 75 octets, every line ends in CRLF, and anything comes back', () => {
  const text = fc
    .string({ unit: 'binary', maxLength: 200 })
    // Control characters are not part of a calendar's text (RFC 5545, 3.1); a lone CR or CRLF is a line break.
    .map((each) => each.replaceAll(/[\p{Cc}\p{Cs}]/gu, '').trim());
  const entry = fc.record({
    uid: fc.uuid(),
    from: fc.integer({ min: 0, max: 4_000_000 }).map((minutes) => minutes * 60_000),
    to: fc.integer({ min: 4_000_001, max: 5_000_000 }).map((minutes) => minutes * 60_000),
    summary: text,
    description: text,
    cancelled: fc.boolean(),
  });
  fc.assert(
    fc.property(fc.array(entry, { maxLength: 3 }), (entries) => {
      const file = calendarFile(entries, NOW);
      expect(file.endsWith('\r\n')).toBe(true);
      for (const line of file.split('\r\n')) {
        expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
        expect(line).not.toMatch(/[\r\n]/);
      }
      expect(readBack(file)).toEqual(entries);
    }),
    { numRuns: 200 },
  );
});
