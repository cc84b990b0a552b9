/** One filling, or the taking back of one (`undoes`). Quantities in thousandths of a litre. */
export interface Fill {
  readonly id: string;
  readonly undoes: string | null;
  readonly visit: string;
  readonly unit: string;
  readonly serial: string;
  readonly fluid: string;
  readonly quantity: number;
  readonly strokes: number | null;
  readonly pump: string;
}

export interface VisitFill<F extends Fill> {
  /** The last filling of that visit. */
  readonly last: F;
  readonly quantity: number;
  /** Null where some of it was not pumped, or with two pumps. */
  readonly strokes: number | null;
}

/** Entries that count: neither taken back nor the taking back itself. */
export function standing<F extends Pick<Fill, 'id' | 'undoes'>>(entries: readonly F[]): F[] {
  const back = new Set(entries.map(({ undoes }) => undoes));
  return entries.filter(({ id, undoes }) => undoes === null && !back.has(id));
}

/**
 * What went into each unit at each visit: filled to the lip, rested, topped up is one sum. In the order of the entries;
 * what was taken back counts nothing.
 */
export function byVisit<F extends Fill>(entries: readonly F[]): VisitFill<F>[] {
  const groups = Map.groupBy(standing(entries), ({ visit, unit, serial, fluid }) =>
    JSON.stringify([visit, unit, serial, fluid]),
  );
  return [...groups.values()].flatMap((fills) => {
    const last = fills.at(-1);
    if (!last) return [];
    const onePump = fills.every(({ strokes, pump }) => strokes !== null && pump === last.pump);
    return [
      {
        last,
        quantity: fills.reduce((all, { quantity }) => all + quantity, 0),
        strokes: onePump ? fills.reduce((all, { strokes }) => all + (strokes ?? 0), 0) : null,
      },
    ];
  });
}
