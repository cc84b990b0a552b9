/** Words of recording a yes and closing out. */
export const decision = {
  title: 'Record a yes',
} as const;
