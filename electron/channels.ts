/** The names under which the window and the program speak to each other on the desktop. */
export const CHANNELS = {
  call: 'shop:call',
  enter: 'shop:enter',
  leave: 'shop:leave',
  who: 'shop:who',
  paper: 'shop:paper',
  begin: 'shop:begin',
  pickCopy: 'shop:pick-copy',
  change: 'shop:change',
  hand: 'shop:hand',
  hands: 'shop:hands',
} as const;
