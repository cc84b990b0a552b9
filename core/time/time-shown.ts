/** A wall time 'HH:MM' in the one form that screens and papers show times in: "8:15", "17:30"; anything else as it is. */
export const timeShown = (time: string): string => time.replace(/^0(?=\d:)/, '');
