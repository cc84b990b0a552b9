/** Words of the place Money. */
export const money = {
  title: 'Money',
  nothing: 'Nothing here yet.',
} as const;
