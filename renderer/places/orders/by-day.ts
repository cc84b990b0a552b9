import { civilDateOf } from '../../../core/time/instant.ts';

export interface DayOf<R> {
  /** Civil date in the shop's zone. */
  readonly day: string;
  readonly rows: readonly R[];
}

/** Rows in their order, parted where another day begins. */
export function byDay<R extends { readonly openedAt: number }>(rows: readonly R[], zone: string): DayOf<R>[] {
  const days: { day: string; rows: R[] }[] = [];
  for (const row of rows) {
    const day = civilDateOf(row.openedAt, zone);
    const last = days.at(-1);
    if (last?.day === day) last.rows.push(row);
    else days.push({ day, rows: [row] });
  }
  return days;
}
