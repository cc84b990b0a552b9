/** Words of the place Shop. */
export const shop = {
  title: 'Shop',
} as const;
