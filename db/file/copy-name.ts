/**
 * What a copy made at this instant is called, by the shop's own clock: `shop 2026-11-20 16.42`. No colon, which Windows
 * does not allow in a name. `at` is epoch ms, `zone` an IANA name.
 */
export function copyName(at: number, zone: string): string {
  return `shop ${localMinute(at, zone)}`;
}

/** An instant as `2026-11-20 16.42` in a zone. */
export function localMinute(at: number, zone: string): string {
  const parts = new Intl.DateTimeFormat('en-CA', {
    timeZone: zone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  }).formatToParts(at);
  const part = (type: Intl.DateTimeFormatPartTypes) => parts.find((each) => each.type === type)?.value ?? '';
  return `${part('year')}-${part('month')}-${part('day')} ${part('hour')}.${part('minute')}`;
}

const NAME = /^shop (\d{4}-\d{2}-\d{2}) (\d{2}\.\d{2})(?: \((\d+)\))?$/;

/** Day, minute and number (1 for the first of its minute) out of a copy's name; null for any other name. */
export function readCopyName(
  name: string,
): { readonly day: string; readonly minute: string; readonly nth: number } | null {
  const [, day, minute, nth] = NAME.exec(name) ?? [];
  return day && minute ? { day, minute, nth: nth ? Number(nth) : 1 } : null;
}
