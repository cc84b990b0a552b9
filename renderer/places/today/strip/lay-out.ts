/** A car in a bay: minutes of the day from midnight. */
export interface Block {
  readonly id: string;
  readonly bayId: string;
  readonly from: number;
  readonly to: number;
}

/** A promised time today in minutes from midnight; what was promised for an earlier day stands at the start of what remains. */
export interface Pennant {
  readonly id: string;
  /** '' for a car that has no bay today. */
  readonly bayId: string;
  readonly at: number;
  /** Past: it flies to the left of its pole. */
  readonly past: boolean;
  /** How wide its cloth is. */
  readonly wide: number;
}

export interface Placed {
  readonly id: string;
  readonly x: number;
  readonly wide: number;
  readonly lane: number;
}
export interface Row {
  readonly bayId: string;
  /** What each lane holds: cars, or pennants alone. */
  readonly lanes: readonly ('cars' | 'pennants')[];
  readonly blocks: readonly Placed[];
  readonly pennants: readonly Placed[];
}

const HOUR = 60;
const DAY = 24 * HOUR;

/** The hours that the strip shows, in minutes: the shop's own, and whatever is booked or promised outside them. */
export function hoursShown(opens: number, closes: number, times: readonly number[]): { from: number; to: number } {
  const from = Math.min(opens, ...times);
  const to = Math.max(closes, ...times);
  return { from: Math.max(0, Math.floor(from / HOUR) * HOUR), to: Math.min(DAY, Math.ceil(to / HOUR) * HOUR) };
}

/** Minutes of a wall time 'HH:MM'. */
export function minutesOf(time: string): number {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  return hours * HOUR + minutes;
}

/** As many whole words as fit into so many signs: what is shown is always the beginning of what is said. */
export function fitting(text: string, signs: number): string {
  if (text.length <= signs) return text;
  const cut = text.slice(0, Math.max(0, signs + 1)).lastIndexOf(' ');
  return cut <= 0 ? '' : text.slice(0, cut).replace(/[,.;:]+$/, '');
}

/**
 * One row a bay, in the bays' order, then one for what has no bay. Blocks that overlap stand in lanes under each other;
 * a pennant takes the first lane where it covers nothing, else a lane of its own. `x` turns minutes into a length; left
 * of `names` the first lane holds the bay's name.
 */
export function layRows(
  bays: readonly string[],
  blocks: readonly Block[],
  pennants: readonly Pennant[],
  x: (minutes: number) => number,
  names = Number.NEGATIVE_INFINITY,
): Row[] {
  const elsewhere = pennants.some((pennant) => !bays.includes(pennant.bayId));
  return [...bays, ...(elsewhere ? [''] : [])].map((bayId) => {
    const taken: [from: number, to: number][][] = [[[Number.NEGATIVE_INFINITY, names]]];
    const place = (id: string, from: number, to: number): Placed => {
      const free = taken.findIndex((lane) => lane.every(([start, end]) => to <= start || from >= end));
      const lane = free === -1 ? taken.push([]) - 1 : free;
      taken[lane]?.push([from, to]);
      return { id, x: from, wide: to - from, lane };
    };
    const mine = (pennant: Pennant) => (bayId === '' ? !bays.includes(pennant.bayId) : pennant.bayId === bayId);
    const cars = blocks
      .filter((block) => block.bayId === bayId)
      .toSorted((a, b) => a.from - b.from)
      .map((block) => place(block.id, x(block.from), x(block.to)));
    const carLanes = taken.length;
    return {
      bayId,
      blocks: cars,
      pennants: pennants
        .filter(mine)
        .toSorted((a, b) => a.at - b.at)
        .map(({ id, at, past, wide }) => place(id, past ? x(at) - wide : x(at), past ? x(at) : x(at) + wide)),
      lanes: taken.map((_, lane) => (lane < carLanes ? 'cars' : 'pennants')),
    };
  });
}
