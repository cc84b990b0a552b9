/** Words of the place Cars. */
export const cars = {
  title: 'Cars',
} as const;
