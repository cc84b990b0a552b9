/** Nine zones of a car as it is seen from above, front at the top: rows, and in each from left to right. */
export const ZONES = [
  'front-left',
  'front-middle',
  'front-right',
  'left-side',
  'middle',
  'right-side',
  'rear-left',
  'rear-middle',
  'rear-right',
] as const;
export type Zone = (typeof ZONES)[number];

const WHEEL = ['link', 'bearing', 'shock', 'brake', 'shaft'] as const;
const SIDE = ['sill', 'brake-line', 'fuel-line', 'door'] as const;

/** What there is to be found in a zone; anything else is said in words. */
export const PARTS = {
  'front-left': [...WHEEL, 'ball-joint', 'tie-rod'],
  'front-middle': ['engine', 'gearbox', 'cooling', 'belt', 'rack', 'mount'],
  'front-right': [...WHEEL, 'ball-joint', 'tie-rod'],
  'left-side': SIDE,
  middle: ['exhaust', 'propshaft', 'shield', 'floor', 'brake-line'],
  'right-side': SIDE,
  'rear-left': WHEEL,
  'rear-middle': ['differential', 'subframe', 'exhaust', 'tank', 'mount'],
  'rear-right': WHEEL,
} as const satisfies Readonly<Record<Zone, readonly string[]>>;
export type Part = (typeof PARTS)[Zone][number];

export const IT_IS = ['loose', 'worn', 'leaking', 'cracked', 'noisy', 'missing'] as const;
export type ItIs = (typeof IT_IS)[number];

/** Where a zone lies on the drawing, which is 300 by 452. */
export function zoneBox(zone: Zone): { x: number; y: number; width: number; height: number } {
  const place = ZONES.indexOf(zone);
  const columns = [8, 128, 174, 292];
  const rows = [6, 150, 300, 446];
  const column = place % 3;
  const row = Math.floor(place / 3);
  const x = columns[column] ?? 0;
  const y = rows[row] ?? 0;
  return { x, y, width: (columns[column + 1] ?? x) - x, height: (rows[row + 1] ?? y) - y };
}
