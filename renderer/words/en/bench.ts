/** Words of the bench. */
export const bench = {
  title: 'The bench',
} as const;
