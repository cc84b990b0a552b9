/** Words of the place Orders. */
export const orders = {
  title: 'Orders',
} as const;
