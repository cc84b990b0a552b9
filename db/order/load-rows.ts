/** The most ids that one question names. */
const MOST = 256;

/**
 * Ids in stretches whose lengths are powers of two, filled up with '', which is nobody's id: so a handful of prepared
 * statements answers for any number of them.
 */
export function padded(ids: readonly string[]): string[][] {
  const stretches: string[][] = [];
  for (let from = 0; from < ids.length; from += MOST) {
    const some = ids.slice(from, from + MOST);
    const length = 2 ** Math.ceil(Math.log2(some.length));
    stretches.push([...some, ...Array.from({ length: length - some.length }, () => '')]);
  }
  return stretches;
}

/** Asks for rows of many ids, stretch by stretch; nothing is asked where there is no id. */
export async function eachOf<R>(ids: readonly string[], ask: (some: readonly string[]) => Promise<R[]>): Promise<R[]> {
  const rows: R[] = [];
  for (const some of padded(ids)) rows.push(...(await ask(some)));
  return rows;
}

/** Rows by the order that they belong to, each order's in the order that they were read. */
export function byOrder<R>(rows: readonly R[], orderOf: (row: R) => string): (id: string) => R[] {
  const kept = new Map<string, R[]>();
  for (const row of rows) {
    const id = orderOf(row);
    const some = kept.get(id);
    if (some) some.push(row);
    else kept.set(id, [row]);
  }
  return (id) => kept.get(id) ?? [];
}
