/** What can be taken out as CSV. Apart from the room, so that a window knows it without the schemas. */
export const EXPORTS = ['customers', 'cars', 'visits', 'orders'] as const;
