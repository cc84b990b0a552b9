/** Words of the place Customers. */
export const customers = {
  title: 'Customers',
} as const;
