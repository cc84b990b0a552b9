/**
 * What a copy made at this instant is called, by the shop's own clock and the trail's last number in it:
 * `shop 2026-11-20 16.42 trail 1204`. No colon, which Windows does not allow in a name. `at` is epoch ms, `zone` an IANA
 * name; `trail` is null for a shop in which nothing has been done yet.
 */
export function copyName(at: number, zone: string, trail: number | null = null): string {
  return `shop ${localMinute(at, zone)}${trail === null ? '' : ` trail ${trail}`}`;
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

/** What a copy's name says. */
export interface NamedCopy {
  /** Civil date. */
  readonly day: string;
  /** `16.42`, by the shop's clock. */
  readonly minute: string;
  /** The trail's last number in it. */
  readonly trail: number | null;
  /** 1 for the first of its name. */
  readonly nth: number;
}

const NAME = /^shop (\d{4}-\d{2}-\d{2}) (\d{2}\.\d{2})(?: trail (\d+))?(?: \((\d+)\))?$/;

/** Reads a copy's name; null for any other name. */
export function readCopyName(name: string): NamedCopy | null {
  const [, day, minute, trail, nth] = NAME.exec(name) ?? [];
  if (!day || !minute) return null;
  return { day, minute, trail: trail === undefined ? null : Number(trail), nth: nth ? Number(nth) : 1 };
}
