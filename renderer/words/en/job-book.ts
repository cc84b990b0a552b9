/** Words of the place Job book. */
export const jobBook = {
  title: 'Job book',
} as const;
