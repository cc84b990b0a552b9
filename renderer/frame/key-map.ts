import type { PlaceName } from './router.ts';

/** The key of each place. */
export const PLACE_KEYS = {
  today: 'Alt+1',
  orders: 'Alt+2',
  cars: 'Alt+3',
  customers: 'Alt+4',
  stock: 'Alt+5',
  'job-book': 'Alt+6',
  money: 'Alt+7',
  shop: 'Alt+8',
} as const satisfies Record<PlaceName, string>;

/**
 * Every key that does something, by where it does it. The sheet under ? is drawn from here, and what a handler asks for is
 * typed by it: a key that is not here acts nowhere.
 */
export const KEY_MAP = [
  {
    where: 'everywhere',
    rows: [
      { keys: ['/', 'Ctrl+K'], does: 'find' },
      { keys: ['N'], does: 'book' },
      { keys: ['Alt+S'], does: 'myClock' },
      { keys: ['Ctrl+Enter'], does: 'mainAction' },
      { keys: ['Esc'], does: 'leave' },
      { keys: ['?'], does: 'theseKeys' },
    ],
  },
  {
    where: 'lists',
    rows: [
      { keys: ['ArrowUp', 'ArrowDown'], does: 'rows' },
      { keys: ['Enter'], does: 'openRow' },
    ],
  },
  {
    where: 'orders',
    rows: [
      { keys: ['Space'], does: 'peek' },
      { keys: ['Alt+P'], does: 'printRow' },
      { keys: ['PageDown'], does: 'weekOn' },
      { keys: ['F'], does: 'filter' },
      { keys: ['ArrowUp', 'ArrowDown', 'PageUp', 'PageDown', 'Home', 'End'], does: 'months' },
    ],
  },
  {
    where: 'sheet',
    rows: [
      { keys: ['Tab'], does: 'nextCell' },
      { keys: ['Enter'], does: 'nextLine' },
      { keys: ['Shift+Enter'], does: 'lineAbove' },
      { keys: ['Ctrl+Z'], does: 'undo' },
      { keys: ['Alt+J'], does: 'newJob' },
      { keys: ['Alt+P'], does: 'print' },
      { keys: ['B'], does: 'bench' },
      { keys: ['Space'], does: 'tick' },
      { keys: ['Alt+Y'], does: 'recordYes' },
    ],
  },
  {
    where: 'yes',
    rows: [{ keys: ['Y', 'N', 'L'], does: 'answers' }],
  },
  {
    where: 'bookings',
    rows: [
      { keys: ['Space', 'Enter'], does: 'takeInHand' },
      { keys: ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown'], does: 'moveBooking' },
      { keys: ['Enter'], does: 'putDown' },
      { keys: ['PageUp', 'PageDown'], does: 'week' },
      { keys: ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown'], does: 'moveMark' },
    ],
  },
  {
    where: 'days',
    rows: [
      { keys: ['ArrowUp', 'ArrowDown'], does: 'dayOn' },
      { keys: ['Alt+ArrowDown'], does: 'month' },
      { keys: ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown'], does: 'dayOfMonth' },
      { keys: ['PageUp', 'PageDown', 'Home', 'End'], does: 'monthOn' },
    ],
  },
  {
    where: 'jobBook',
    rows: [
      { keys: ['Alt+ArrowUp', 'Alt+ArrowDown'], does: 'moveStep' },
      { keys: ['Ctrl+Z'], does: 'putStepBack' },
    ],
  },
] as const;

type Row = (typeof KEY_MAP)[number]['rows'][number];
/** 'Alt+J', 'Ctrl+Enter', 'N', '/', 'Space', 'Esc', 'ArrowUp'. Letters in capitals, without Shift. */
export type Combo = Row['keys'][number] | (typeof PLACE_KEYS)[PlaceName];
/** What a row of the map does; its words are under this name. */
export type Does = Row['does'];

const ALL: ReadonlySet<string> = new Set([
  ...Object.values(PLACE_KEYS),
  ...KEY_MAP.flatMap(({ rows }) => rows.flatMap(({ keys }): readonly Combo[] => keys)),
]);

/** Whether the map has it. */
export const isCombo = (name: string): name is Combo => ALL.has(name);

/** As it stands on the key, or beside a button: 'Ctrl Enter', 'Page Down', 'Up'. */
export const keyName = (combo: Combo): string =>
  combo
    .replaceAll('+', ' ')
    .replace('Arrow', '')
    .replace(/^Page(?=[UD])/, 'Page ');
