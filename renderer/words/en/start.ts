/** Words of the first start. */
export const start = {
  title: 'Your garage, on one page',
} as const;
