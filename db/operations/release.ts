import type { Context, Handlers } from '../context.ts';
import { newId } from '../id.ts';
import { doersOfOrder, heldForDoers } from '../order/doers.ts';
import { finalChecksOf } from '../order/final-checks.ts';
import { addFinding } from '../order/findings.ts';
import { type Loaded, loadOrder } from '../order/load.ts';
import { letterOf } from '../order/reckon.ts';
import { signedIn } from '../people.ts';
import { badInput, notFound } from '../refusal.ts';
import { readMileage } from './desk.ts';
import { openSheet } from './on-the-sheet.ts';
import { setQuarantine } from './quarantine.ts';
import { whenDone } from './step.ts';

const nameIn = (loaded: Loaded) => (personId: string | null) =>
  personId === null ? '' : (loaded.people.get(personId)?.name ?? '');

async function drivesOf(context: Context, loaded: Loaded) {
  const rows = await context.tx
    .selectFrom('test_drive')
    .selectAll()
    .where('work_order_id', '=', loaded.order.id)
    .orderBy('at')
    .orderBy('id')
    .execute();
  const name = nameIn(loaded);
  return rows.map((row) => ({
    ...{ id: row.id, jobId: row.job_id, purpose: row.purpose, by: name(row.person_id), out: row.out_reading },
    ...{ in: row.in_reading, outcome: row.outcome, words: row.words, at: row.at },
  }));
}

async function finalListsOf(context: Context, loaded: Loaded) {
  const wanted = finalChecksOf(loaded, loaded.jobs);
  if (wanted.length === 0) return [];
  const titles = new Map(
    (await context.tx.selectFrom('check_list').select(['id', 'title']).execute()).map((row) => [row.id, row.title]),
  );
  return wanted.map(({ job, listId, done }) => ({
    ...{ jobId: job.id, letter: letterOf(job.place), checkListId: listId, title: titles.get(listId) ?? '' },
    done: done === null ? null : { by: nameIn(loaded)(done.person_id), at: done.at },
  }));
}

/** Jobs of the order that take up an earlier one again, with that one. */
async function comebacksOf(context: Context, loaded: Loaded) {
  const again = loaded.jobs.filter((job) => job.first_job_id !== null);
  if (again.length === 0) return [];
  const firsts = await context.tx
    .selectFrom('job')
    .innerJoin('work_order', 'work_order.id', 'job.work_order_id')
    .select(['job.id', 'job.title', 'job.work_order_id', 'work_order.number'])
    .where(
      'job.id',
      'in',
      again.map((job) => job.first_job_id ?? ''),
    )
    .execute();
  return again.flatMap((job) => {
    const first = firsts.find((one) => one.id === job.first_job_id);
    if (!first) return [];
    return [
      {
        jobId: job.id,
        letter: letterOf(job.place),
        firstJobId: first.id,
        firstTitle: first.title,
        firstOrderId: first.work_order_id,
        firstOrderNumber: first.number,
        cause: job.comeback_cause ?? ('' as const),
      },
    ];
  });
}

export const releaseHandlers: Handlers = {
  'release.get': async ({ orderId }, context) => {
    const loaded = await loadOrder(context, orderId);
    const name = nameIn(loaded);
    return {
      quarantines: loaded.quarantines.map((row) => ({
        ...{ id: row.id, revision: row.revision, what: row.what, partId: row.part_id, words: row.words },
        ...{ by: name(row.person_id), at: row.at },
        lifted: row.lifted_at === null ? null : { at: row.lifted_at, by: name(row.lifted_by), why: row.lift_why },
      })),
      drives: await drivesOf(context, loaded),
      finalChecks: await finalListsOf(context, loaded),
      doers: [...doersOfOrder(loaded, null)].map((personId) => ({ personId, name: name(personId) })),
      comebacks: await comebacksOf(context, loaded),
    };
  },
  'testDrive.record': async (input, context) => {
    const who = signedIn(context);
    const { orderId, jobId, purpose, outcome, words, at } = input;
    const when = whenDone(context, at);
    const order = await openSheet(context, orderId);
    const loaded = await loadOrder(context, orderId);
    if (jobId !== null && !loaded.jobs.some((job) => job.id === jobId)) throw notFound('job', jobId);
    if (input.in < input.out) throw badInput('in', 'too-little', { least: input.out });
    if (outcome !== 'fine' && words === '') throw badInput('words', 'needed');
    if (purpose === 'check') heldForDoers(loaded, jobId, who.id);
    await readMileage(context, order.car_id, orderId, input.out, 'none');
    await readMileage(context, order.car_id, orderId, input.in, 'none');
    const id = newId();
    await context.write.insert('test_drive', {
      ...{ id, work_order_id: orderId, job_id: jobId, person_id: who.id, purpose, outcome, words },
      ...{ out_reading: input.out, in_reading: input.in, at: when.at },
    });
    const { urgency } = input;
    const findingId =
      outcome === 'found'
        ? await addFinding(context, orderId, null, {
            ...{ text: words, urgency, place: '', part: '', measured: null, mend: null },
          })
        : null;
    const quarantineId =
      outcome === 'not-released'
        ? await setQuarantine(context, { work_order_id: orderId, what: 'car', part_id: null, words })
        : null;
    return { id, findingId, quarantineId };
  },
};
