import type { Handlers } from '../context.ts';
import { verify } from '../verify.ts';

export const careHandlers: Handlers = {
  'care.verify': (_input, context) => verify(context.tx),
  'trail.list': async ({ before, most }, context) => {
    const rows = await context.tx
      .selectFrom('trail')
      .leftJoin('person', 'person.id', 'trail.person_id')
      .select(['trail.n', 'trail.at', 'person.name', 'trail.operation', 'trail.changes'])
      .where('trail.n', '<', before ?? Number.MAX_SAFE_INTEGER)
      .orderBy('trail.n', 'desc')
      .limit(most)
      .execute();
    return {
      rows: rows.map((row) => ({
        n: row.n,
        at: row.at,
        person: row.name ?? '',
        operation: row.operation,
        changes: row.changes,
      })),
    };
  },
};
