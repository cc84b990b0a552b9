import { civilDateOf } from '../../../core/time/instant.ts';
import type { Week } from './OrderWeek.tsx';

/** A month of orders: the week that its scroll bar leads to, and how many there were. */
export interface Month {
  /** 'YYYY-MM'. */
  readonly month: string;
  readonly n: number;
  /** The newest week of the month, or of an older one where it has none. */
  readonly week: number;
}

/** Months from the newest to the oldest, empty ones too; a week counts to the month of its middle. */
export function monthsOf(weeks: readonly Week[], zone: string): Month[] {
  const counted = new Map<string, { n: number; week: number }>();
  for (const { from, to, n } of weeks) {
    const month = civilDateOf((from + to) / 2, zone).slice(0, 7);
    const known = counted.get(month);
    counted.set(month, { n: n + (known?.n ?? 0), week: known?.week ?? from });
  }
  const names = [...counted.keys()];
  const [newest, oldest] = [names[0], names.at(-1)];
  if (newest === undefined || oldest === undefined) return [];
  const all: Month[] = [];
  let older = counted.get(oldest)?.week ?? 0;
  for (let month = oldest; month <= newest; month = after(month)) {
    const { n, week } = counted.get(month) ?? { n: 0, week: older };
    older = week;
    all.unshift({ month, n, week });
  }
  return all;
}

function after(month: string): string {
  const [year = 0, number = 0] = month.split('-').map(Number);
  return number === 12 ? `${year + 1}-01` : `${year}-${String(number + 1).padStart(2, '0')}`;
}
