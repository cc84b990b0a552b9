import type { Connection } from './file/connection.ts';

/** The shop's own IANA zone; this machine's while the shop is not set up, or where it cannot be read. */
export function zoneOf(raw: Connection): string {
  try {
    const row = raw.prepare<[], { settings: string }>('SELECT settings FROM shop').get();
    const settings: unknown = JSON.parse(row?.settings ?? '{}');
    if (typeof settings === 'object' && settings !== null && 'zone' in settings && typeof settings.zone === 'string')
      return settings.zone;
  } catch {
    // A shop of another schema is copied all the same, under this machine's time.
  }
  return Intl.DateTimeFormat().resolvedOptions().timeZone;
}
