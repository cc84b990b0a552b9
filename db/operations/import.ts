import type { Mapping } from '../../core/bring-in/fields.ts';
import type { OutputOf } from '../../core/contract/index.ts';
import type { Context, Handlers } from '../context.ts';
import { newId } from '../id.ts';
import { makeAll } from '../import/make.ts';
import { takeBack } from '../import/take-back.ts';
import { workOut } from '../import/work-out.ts';
import { settingsOf, signedIn } from '../people.ts';
import { badInput, notFound } from '../refusal.ts';

type Counts = OutputOf<'import.put'>['made'];
const NOTHING: Counts = { customers: 0, cars: 0, visits: 0, known: 0, bad: 0 };

/** A file that is being brought in. Throws not-found, and bad-input once it was taken back. */
async function standingRun(context: Context, id: string) {
  const run = await context.tx.selectFrom('import_run').selectAll().where('id', '=', id).executeTakeFirst();
  if (!run) throw notFound('import', id);
  if (run.undone_at !== null) throw badInput('id', 'taken-back');
  return run;
}

export const importHandlers: Handlers = {
  'import.try': async ({ mapping, rows }, context) => {
    const { would, known, bad } = await workOut(context, mapping, rows);
    return { would, known, bad };
  },
  'import.begin': async ({ fileName, fileHash, mapping }, context) => {
    settingsOf(context);
    const id = newId();
    await context.write.insert('import_run', {
      ...{ id, revision: 1, file_name: fileName, file_hash: fileHash, mapping: JSON.stringify(mapping) },
      ...{ counts: JSON.stringify(NOTHING), person_id: signedIn(context).id, at: context.now, undone_at: null },
    });
    return { id };
  },
  'import.put': async ({ id, rows }, context) => {
    const run = await standingRun(context, id);
    // A file begun by an earlier version of this program said nothing of its sums.
    const mapping = { decimal: null, ...(JSON.parse(run.mapping) as Omit<Mapping, 'decimal'>) };
    const plan = await workOut(context, mapping, rows);
    await makeAll(context, id, plan);
    const made = {
      customers: plan.customers.length,
      cars: plan.cars.length,
      visits: plan.visits.length,
      known: plan.known,
      bad: plan.bad.length,
    };
    const before = JSON.parse(run.counts) as Counts;
    const counts = Object.fromEntries(
      Object.entries(made).map(([what, n]) => [what, before[what as keyof Counts] + n]),
    );
    await context.write.update('import_run', id, { counts: JSON.stringify(counts), revision: run.revision + 1 });
    return { made, bad: plan.bad };
  },
  'import.undo': async ({ id, after }, context) => {
    const run = await standingRun(context, id);
    const taken = await takeBack(context, id, after);
    if (taken.next === null)
      await context.write.update('import_run', id, { undone_at: context.now, revision: run.revision + 1 });
    return taken;
  },
  'import.list': async (_input, { tx }) => {
    const rows = await tx
      .selectFrom('import_run')
      .innerJoin('person', 'person.id', 'import_run.person_id')
      .selectAll('import_run')
      .select('person.name as person')
      .orderBy('import_run.at', 'desc')
      .orderBy('import_run.id', 'desc')
      .limit(100)
      .execute();
    return {
      runs: rows.map((row) => ({
        id: row.id,
        fileName: row.file_name,
        fileHash: row.file_hash,
        person: row.person,
        at: row.at,
        counts: JSON.parse(row.counts) as Counts,
        undoneAt: row.undone_at,
      })),
    };
  },
};
