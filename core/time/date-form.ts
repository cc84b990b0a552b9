/** How a date is written: as the language does it, or in figures in this order. */
export type DateForm = 'language' | 'day-month' | 'month-day' | 'year-month';

/**
 * A civil date 'YYYY-MM-DD' in figures: '03/09/2026', '09/03/2026' or '2026-09-03' (ISO 8601); without its year where
 * `short`. Null where the language writes it.
 */
export function dateInFigures(date: string, form: DateForm, short: boolean): string | null {
  const [year = '', month = '', day = ''] = date.split('-');
  if (form === 'language') return null;
  if (form === 'year-month') return short ? `${month}-${day}` : date;
  const parts = form === 'day-month' ? [day, month] : [month, day];
  return [...parts, ...(short ? [] : [year])].join('/');
}
