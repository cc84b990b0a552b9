/** Words of the order sheet. */
export const sheet = {
  order: 'Order',
} as const;
