/** A day's hours in thousandths of an hour. */
export interface DayLoad {
  /** What each mechanic who is there that day is present for. */
  readonly present: readonly number[];
  /** Share of it that is planned to be sold, in hundredths of a percent: 8500 is 85 %. */
  readonly shareBp: number;
  readonly booked: readonly number[];
}

/**
 * Hours that can still be promised on a day, in thousandths: present hours x planned share, less what is booked.
 * Below zero the day is over-booked. Common practice, no source.
 */
export function hoursFree({ present, shareBp, booked }: DayLoad): number {
  const sold = Math.round((present.reduce((all, hours) => all + hours, 0) * shareBp) / 10_000);
  return sold - booked.reduce((all, hours) => all + hours, 0);
}

/** Whether a job of so many hours fits; exactly the free hours fit. */
export const fits = (load: DayLoad, hours: number): boolean => hours <= hoursFree(load);
