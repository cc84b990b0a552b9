/** Words of booking a car in. */
export const intake = {
  title: 'Book a car in',
} as const;
