import type { Context, Handlers } from '../context.ts';
import { newId } from '../id.ts';
import { signedIn } from '../people.ts';
import { badInput, held, notAllowed, notFound } from '../refusal.ts';
import type { ClockEntryRow } from '../tables.ts';
import { heldUnlessCovered, jobRow, openSheet } from './on-the-sheet.ts';

/** Whose clock is meant: one's own, or another's, which only desk and owner may touch. */
function whose(context: Context, personId: string | null): string {
  const who = signedIn(context);
  if (personId === null || personId === who.id) return who.id;
  if (who.role === 'mechanic') throw notAllowed('others-clock');
  return personId;
}

/** When a clock was tapped: now, or earlier where the shop was out of reach; entries of one person never overlap. */
async function tappedAt(context: Context, personId: string, at: number | null): Promise<number> {
  if (at === null) return context.now;
  if (at > context.now) throw badInput('at', 'in-the-future');
  const last = await context.tx
    .selectFrom('clock_entry')
    .select('off_at')
    .where('person_id', '=', personId)
    .where('off_at', 'is not', null)
    .orderBy('off_at', 'desc')
    .limit(1)
    .executeTakeFirst();
  const ended = last?.off_at ?? null;
  if (ended !== null && at < ended) throw held([{ what: 'clock-before-last', with: { on: ended } }]);
  return at;
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

/** One person, one job at a time: what is put right lies over no other entry that counts, nor over a clock that runs. */
async function freeOfOthers(context: Context, old: ClockEntryRow, on: number, off: number): Promise<void> {
  const { tx } = context;
  const over = await tx
    .selectFrom('clock_entry')
    .select('id')
    .where('person_id', '=', old.person_id)
    .where('id', '!=', old.id)
    .where('on_at', '<', off)
    .where('off_at', '>', on)
    .where(
      'id',
      'not in',
      tx.selectFrom('clock_entry').select('corrects').where('corrects', 'is not', null).$castTo<{ corrects: string }>(),
    )
    .executeTakeFirst();
  const running = await tx
    .selectFrom('clock_open')
    .select('person_id')
    .where('person_id', '=', old.person_id)
    .where('on_at', '<', off)
    .executeTakeFirst();
  if (over || running) throw badInput(over ? 'on' : 'off', 'over-another');
}

export const benchHandlers: Handlers = {
  'clock.on': async ({ jobId, kind, personId, at }, context) => {
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
    const tapped = await tappedAt(context, person, at);
    const closed = await close(context, person, tapped, '');
    await context.write.insert('clock_open', { person_id: person, job_id: jobId, kind, on_at: tapped });
    return { closed };
  },
  'clock.off': async ({ personId, at }, context) => {
    const person = whose(context, personId);
    const closed = await close(context, person, await tappedAt(context, person, at), '');
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
    await freeOfOthers(context, old, on, off);
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
};
