/** Reads a time of day as typed, "730", "7:30", "7.30", "7h30", "7", "7:30 pm", as 'HH:MM'; null where there is none. */
export function readTime(text: string): string | null {
  const match = /^(\d{1,2})(?:[:.h ]?(\d{2}))?h?\s*([ap])?\.?(?:m\.?)?$/.exec(text.trim().toLowerCase());
  if (match === null) return null;
  const [, hours = '', minutes = '00', half] = match;
  const hour = Number(hours);
  if (half !== undefined && (hour < 1 || hour > 12)) return null;
  const whole = half === undefined ? hour : (hour % 12) + (half === 'p' ? 12 : 0);
  return whole > 23 || Number(minutes) > 59 ? null : `${String(whole).padStart(2, '0')}:${minutes}`;
}
