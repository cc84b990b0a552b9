import type { MayGo } from '../core/customer/take-out.ts';
import type { Context } from './context.ts';
import type { CustomerRow } from './tables.ts';
import type { Change } from './writer.ts';

/** What stands in the place of what was taken out; the triggers of schema 10 let nothing else in. */
export const TAKEN_OUT = '—';

/** The columns of an entry that each thing is kept in, and what is left in its place. */
export const COLUMNS: Readonly<Partial<Record<MayGo, Partial<CustomerRow>>>> = {
  note: { note: '' },
  others: { may_yes: '[]' },
  contact: { phone: '', phone2: '', email: '', address: '[]', tell_by: '', find_phone: '', find_phone2: '' },
  name: { name: TAKEN_OUT, find_name: '', tax_number: '', tax_exempt: '' },
};

/**
 * Takes values of entries out of what the trail noted when they were changed: what stood before and after in these
 * columns. Returns how many of its rows lost some.
 */
export async function takeOutOfTrail(
  context: Context,
  ids: readonly string[],
  columns: readonly string[],
): Promise<number> {
  const gone = new Set(columns);
  let rows = 0;
  for (const id of ids) {
    const found = await context.tx
      .selectFrom('trail')
      .select(['n', 'changes'])
      .where('changes', 'like', `%"t":"customer","id":"${id}"%`)
      .orderBy('n')
      .execute();
    for (const { n, changes } of found) {
      const kept = JSON.stringify(
        (JSON.parse(changes) as Change[]).map((change) =>
          change.t === 'customer' && change.id === id ? without(change, gone) : change,
        ),
      );
      if (kept === changes) continue;
      await context.write.takeOutOfTrail(n, kept);
      rows += 1;
    }
  }
  return rows;
}

const without = (change: Change, gone: ReadonlySet<string>): Change => {
  const blank = (values: Record<string, unknown>) =>
    Object.fromEntries(Object.entries(values).map(([name, value]) => [name, gone.has(name) ? TAKEN_OUT : value]));
  return {
    ...change,
    ...(change.was === undefined ? {} : { was: blank(change.was) }),
    ...(change.now === undefined ? {} : { now: blank(change.now) }),
  };
};
