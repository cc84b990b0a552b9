import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { OutputOf } from '../../core/contract/index.ts';
import { booksOf, periodOf } from '../books/asked.ts';
import { fileByNumber, filesOf, runFolder } from '../books/run-files.ts';
import { owingOn } from '../books/statement.ts';
import type { Context, Handlers } from '../context.ts';
import { shopPaths } from '../file/folder.ts';
import { newId } from '../id.ts';
import { eachOf } from '../order/load-rows.ts';
import { signedIn } from '../people.ts';
import { notFound } from '../refusal.ts';
import type { StatementRow } from '../tables.ts';

type Run = NonNullable<OutputOf<'statement.run'>['run']>;

/** The statements of a run in their order, the first is number 1. Throws not-found. */
async function rowsOf(context: Context, runId: string): Promise<readonly [StatementRow, ...StatementRow[]]> {
  const rows = await context.tx.selectFrom('statement').selectAll().where('run_id', '=', runId).orderBy('id').execute();
  const [first, ...rest] = rows;
  if (!first) throw notFound('statement', runId);
  return [first, ...rest];
}

const folderOf = (context: Context, { run_id, until_day }: StatementRow): string =>
  runFolder(context.folder, until_day, run_id ?? '');

/** Once this is kept, makes in a thread what has no file yet. */
function makeMissing(context: Context, runId: string, rows: readonly [StatementRow, ...StatementRow[]]): void {
  const [first] = rows;
  const folder = folderOf(context, first);
  const there = fileByNumber(filesOf(folder));
  const missing = rows.map((row, at) => ({ n: at + 1, customerId: row.customer_id })).filter(({ n }) => !there.has(n));
  const { database } = shopPaths(context.folder);
  const task = {
    ...{ database, practice: context.practice, folder, joined: first.joined === 1, rows: missing },
    ...{ from: first.from_day, until: first.until_day, asOf: first.as_of },
  };
  if (missing.length > 0) context.afterwards(() => context.runs.begin(runId, task, rows.length - missing.length));
}

async function seenRun(context: Context, runId: string): Promise<Run> {
  const rows = await rowsOf(context, runId);
  const [first] = rows;
  const folder = folderOf(context, first);
  const files = filesOf(folder);
  const there = fileByNumber(files);
  const state = context.runs.stateOf(runId);
  const people = await eachOf([...new Set(rows.map((row) => row.customer_id))], (some) =>
    context.tx.selectFrom('customer').select(['id', 'name', 'email']).where('id', 'in', some).execute(),
  );
  const byId = new Map(people.map((one) => [one.id, one]));
  const sent = await context.tx
    .selectFrom('statement_sent')
    .innerJoin('statement', 'statement.id', 'statement_sent.statement_id')
    .innerJoin('person', 'person.id', 'statement_sent.person_id')
    .select(['statement.id', 'statement_sent.at', 'statement_sent.how', 'person.name as by'])
    .where('statement.run_id', '=', runId)
    .orderBy('statement_sent.at')
    .execute();
  return {
    runId,
    ...{ from: first.from_day, until: first.until_day, asOf: first.as_of, joined: first.joined === 1 },
    of: rows.length,
    // What is laid out and not yet in a file counts while it is being made.
    made: state?.running ? Math.max(there.size, state.madeBefore + state.made) : there.size,
    ...{ running: state?.running ?? false, stopping: state?.stopping ?? false },
    spent: state?.running ? state.spent : null,
    madeBefore: state?.madeBefore ?? 0,
    failed: state?.failed ?? null,
    leftOut: (state?.leftOut ?? []).map(({ customerId, customer, characters }) => ({
      ...{ customerId, customer, characters },
    })),
    ...{ folder, files: [...files] },
    rows: rows.map((row, at) => ({
      id: row.id,
      customerId: row.customer_id,
      customer: byId.get(row.customer_id)?.name ?? '',
      email: byId.get(row.customer_id)?.email ?? '',
      closing: row.closing,
      file: there.get(at + 1) ?? null,
      sent: sent.filter(({ id }) => id === row.id).map(({ at: when, how, by }) => ({ at: when, how, by })),
    })),
  };
}

/** The statements that stand in a file of a run, by id. Throws not-found for a file that is none of it. */
export async function statementsInFile(context: Context, runId: string, name: string): Promise<string[]> {
  const rows = await rowsOf(context, runId);
  const files = filesOf(folderOf(context, rows[0]));
  if (!files.includes(name)) throw notFound('statement', name);
  const there = fileByNumber(files);
  return rows.filter((_, at) => there.get(at + 1) === name).map((row) => row.id);
}

/**
 * Statements that wait to be sent: those of the last run, until one that was made then or later is written down as sent to
 * the customer. An older run waits no more: a newer one says what is owed now. null: none waits.
 */
export async function statementsToSend({ tx }: Context): Promise<{ n: number; until: string } | null> {
  const last = await lastRun(tx);
  if (last === undefined) return null;
  const row = await tx
    .selectFrom('statement')
    .select(({ fn }) => fn.countAll<number>().as('n'))
    .where('run_id', '=', last.run_id)
    .where((on) =>
      on.not(
        on.exists(
          on
            .selectFrom('statement as made')
            .innerJoin('statement_sent', 'statement_sent.statement_id', 'made.id')
            .select('statement_sent.id')
            .whereRef('made.customer_id', '=', 'statement.customer_id')
            .whereRef('made.at', '>=', 'statement.at'),
        ),
      ),
    )
    .executeTakeFirstOrThrow();
  return Number(row.n) === 0 ? null : { n: Number(row.n), until: last.until_day };
}

const lastRun = (tx: Context['tx']) =>
  tx
    .selectFrom('statement')
    .select(['run_id', 'until_day'])
    .where('run_id', 'is not', null)
    .orderBy('at', 'desc')
    .orderBy('id', 'desc')
    .limit(1)
    .executeTakeFirst();

export const statementRunHandlers: Handlers = {
  'statement.start': async (input, context) => {
    const period = periodOf(context, input);
    const owing = await owingOn(booksOf(context), period.until, context.now);
    const runId = newId();
    const person_id = signedIn(context).id;
    for (const { customerId, statement } of owing)
      await context.write.insert('statement', {
        ...{ id: newId(), run_id: runId, joined: input.joined ? 1 : 0, customer_id: customerId },
        ...{ from_day: period.from, until_day: period.until, as_of: context.now },
        ...{ closing: statement.closing, person_id, at: context.now },
      });
    if (owing.length > 0) makeMissing(context, runId, await rowsOf(context, runId));
    return { runId, of: owing.length };
  },
  'statement.stop': async ({ runId }, context) => {
    await rowsOf(context, runId);
    context.afterwards(() => context.runs.stop(runId));
    return { runId };
  },
  'statement.goOn': async ({ runId }, context) => {
    makeMissing(context, runId, await rowsOf(context, runId));
    return { runId };
  },
  'statement.run': async ({ runId }, context) => {
    if (runId !== null) return { run: await seenRun(context, runId) };
    const last = await lastRun(context.tx);
    return { run: last?.run_id == null ? null : await seenRun(context, last.run_id) };
  },
  'statement.file': async ({ runId, name }, context) => {
    const [first] = await rowsOf(context, runId);
    const folder = folderOf(context, first);
    if (!filesOf(folder).includes(name)) throw notFound('statement', name);
    return { name: name.replace(/^[\d-]+ /, ''), base64: readFileSync(join(folder, name)).toString('base64') };
  },
};
