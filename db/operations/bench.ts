import { missingEntries } from '../../core/bench/torque.ts';
import { codeFits } from '../code.ts';
import type { Context, Handlers } from '../context.ts';
import { newId } from '../id.ts';
import { stepsOf } from '../order/facts.ts';
import { loadOrder } from '../order/load.ts';
import { letterOf } from '../order/reckon.ts';
import { signedIn } from '../people.ts';
import { badInput, held, notAllowed, notFound } from '../refusal.ts';
import { heldUnlessCovered, jobRow, openSheet } from './on-the-sheet.ts';

/** Whose clock is meant: one's own, or another's, which only desk and owner may touch. */
function whose(context: Context, personId: string | null): string {
  const who = signedIn(context);
  if (personId === null || personId === who.id) return who.id;
  if (who.role === 'mechanic') throw notAllowed('others-clock');
  return personId;
}

/** Turns a running clock into an entry that never changes. off null: forgotten, counts nothing. */
async function close(context: Context, personId: string, off: number | null, why: string): Promise<string | null> {
  const running = await context.tx
    .selectFrom('clock_open')
    .selectAll()
    .where('person_id', '=', personId)
    .executeTakeFirst();
  if (!running) return null;
  if (off !== null && off < running.on_at) throw held([{ what: 'clock-before-last', with: { on: running.on_at } }]);
  const id = newId();
  await context.write.insert('clock_entry', {
    id,
    person_id: personId,
    job_id: running.job_id,
    kind: running.kind,
    on_at: running.on_at,
    off_at: off,
    corrects: null,
    why,
    recorded_by: signedIn(context).id,
    recorded_at: context.now,
  });
  await context.write.remove('clock_open', personId);
  return id;
}

export const benchHandlers: Handlers = {
  'clock.on': async ({ jobId, kind, personId }, context) => {
    const person = whose(context, personId);
    const row = await context.tx
      .selectFrom('person')
      .select('id')
      .where('id', '=', person)
      .where('active', '=', 1)
      .executeTakeFirst();
    if (!row) throw notFound('person', person);
    if (kind === 'work') {
      if (jobId === null) throw badInput('jobId', 'needed-for-work');
      await heldUnlessCovered(context, jobId);
    }
    const closed = await close(context, person, context.now, '');
    await context.write.insert('clock_open', { person_id: person, job_id: jobId, kind, on_at: context.now });
    return { closed };
  },
  'clock.off': async ({ personId }, context) => {
    const closed = await close(context, whose(context, personId), context.now, '');
    if (closed === null) throw held([{ what: 'no-clock-running', with: {} }]);
    return { closed };
  },
  'clock.forgotten': async ({ personId }, context) => {
    const id = await close(context, whose(context, personId), null, 'forgotten');
    if (id === null) throw held([{ what: 'no-clock-running', with: {} }]);
    return { id };
  },
  'clock.correct': async ({ entryId, on, off, jobId, why }, context) => {
    const who = signedIn(context);
    const old = await context.tx.selectFrom('clock_entry').selectAll().where('id', '=', entryId).executeTakeFirst();
    if (!old) throw notFound('clock_entry', entryId);
    if (old.person_id !== who.id && who.role !== 'owner') throw notAllowed('others-clock');
    const before = await context.tx
      .selectFrom('clock_entry')
      .select('id')
      .where('corrects', '=', entryId)
      .executeTakeFirst();
    if (before) throw badInput('entryId', 'corrected-already');
    if (off < on) throw badInput('off', 'before-on');
    if (off > context.now) throw badInput('off', 'in-the-future');
    for (const id of [old.job_id, jobId])
      if (id !== null) await openSheet(context, (await jobRow(context, id)).work_order_id);
    const id = newId();
    await context.write.insert('clock_entry', {
      id,
      person_id: old.person_id,
      job_id: jobId,
      kind: old.kind,
      on_at: on,
      off_at: off,
      corrects: entryId,
      why,
      recorded_by: who.id,
      recorded_at: context.now,
    });
    return { id };
  },
  'step.tick': async ({ jobId, n, state, why, entered, second, at }, context) => {
    const who = signedIn(context);
    const job = await heldUnlessCovered(context, jobId);
    const loaded = await loadOrder(context, job.work_order_id);
    const steps = stepsOf(loaded, jobId);
    const found = steps.find(({ step }) => step.n === n);
    if (!found) throw notFound('step', String(n));
    if ((state === 'not-needed' || state === 'failed') && why === '') throw badInput('why', 'needed');
    if (state === 'done') {
      // A hold point stops whatever comes after it until it is settled.
      const stop = steps.find(
        ({ step, last }) =>
          step.n < n && step.hold !== '' && (last === null || last.state === 'open' || last.state === 'failed'),
      );
      if (stop) throw held([{ what: 'hold-point', with: { step: stop.step.n, hold: stop.step.hold } }]);
      const missing = missingEntries(found.group, entered);
      if (missing > 0)
        throw held([{ what: 'torque-missing', with: { letter: letterOf(job.place), step: n, missing } }]);
      if (found.step.second === 'signs' && second === null)
        throw held([{ what: 'second-missing', with: { letter: letterOf(job.place), step: n } }]);
    }
    if (second) {
      if (second.personId === who.id) throw held([{ what: 'second-is-first', with: {} }]);
      const other = await context.tx
        .selectFrom('person')
        .select(['id', 'code_hash'])
        .where('id', '=', second.personId)
        .where('active', '=', 1)
        .executeTakeFirst();
      if (!other || !codeFits(second.code, other.code_hash)) throw notAllowed('code');
    }
    await context.write.insert('step_done', {
      id: newId(),
      job_id: jobId,
      step: n,
      state,
      why,
      entered,
      person_id: who.id,
      second_id: second?.personId ?? null,
      at: at ?? context.now,
      recorded_at: context.now,
      wrench_id: null,
      reading: null,
      late: null,
    });
    const reopened: number[] = [];
    // Going back opens what came after.
    if (state === 'open' || state === 'failed') {
      for (const { step, last } of steps) {
        if (step.n <= n || last === null || last.state === 'open') continue;
        await context.write.insert('step_done', {
          id: newId(),
          job_id: jobId,
          step: step.n,
          state: 'open',
          why: `step ${n} again`,
          entered: 0,
          person_id: who.id,
          second_id: null,
          at: context.now,
          recorded_at: context.now,
          wrench_id: null,
          reading: null,
          late: null,
        });
        reopened.push(step.n);
      }
    }
    return { reopened };
  },
};
