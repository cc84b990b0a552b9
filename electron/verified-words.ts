import { operations } from '../core/contract/index.ts';

/** What checking everything found, as sentences for the command line. */
export function sayVerified(output: unknown): { readonly sound: boolean; readonly sentences: readonly string[] } {
  const { sound, checked, faults } = operations['care.verify'].output.parse(output);
  if (sound) {
    const rows = Object.values(checked).reduce((sum, count) => sum + count, 0);
    return { sound, sentences: [`Everything agrees: ${rows} rows were looked at.`] };
  }
  const shown = faults.slice(0, 20).map(({ what, table, row, detail }) => `  ${table} ${row}: ${what} (${detail})`);
  const rest = faults.length - shown.length;
  return {
    sound,
    sentences: [
      faults.length === 1 ? 'One thing does not agree:' : `${faults.length} things do not agree:`,
      ...shown,
      ...(rest > 0 ? [`  and ${rest} more, in the answer`] : []),
    ],
  };
}
