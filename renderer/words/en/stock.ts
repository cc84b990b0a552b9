/** Words of the place Stock. */
export const stock = {
  title: 'Stock',
  nothing: 'Nothing here yet.',
} as const;
