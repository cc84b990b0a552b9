import { checkProcedure, thingsToMend } from '../../core/bench/procedure-check.ts';
import { paperWords } from '../../core/paper/words.ts';
import type { Context, Handlers } from '../context.ts';
import { newId } from '../id.ts';
import { type BookContent, bookContent } from '../order/book-content.ts';
import { mendedBy } from '../order/findings.ts';
import { lastTimes } from '../order/last-times.ts';
import { settingsOf, signedIn } from '../people.ts';
import { badInput, held, notFound, Refusal } from '../refusal.ts';
import { addJob } from './on-the-sheet.ts';

/** The newest version of a job, a draft too; `inUse` is the one that the bench gets, 0 while there is none. */
async function newest(context: Context, id: string, inUseOnly = false) {
  const row = await context.tx
    .selectFrom('book_job')
    .innerJoin('book_job_version', 'book_job_version.book_job_id', 'book_job.id')
    .select([
      'book_job.id',
      'book_job.version as inUse',
      'book_job_version.id as versionId',
      'book_job_version.version',
      'book_job_version.content',
    ])
    .where('book_job.id', '=', id)
    .$if(inUseOnly, (query) => query.whereRef('book_job_version.version', '=', 'book_job.version'))
    .orderBy('book_job_version.version', 'desc')
    .limit(1)
    .executeTakeFirst();
  if (!row) throw notFound('book_job', id);
  return { ...row, content: bookContent({ id: row.versionId, content: row.content }) };
}

/** The content as whoever asks may see it. */
const seenContent = (context: Context, content: BookContent): BookContent =>
  context.seesPrices
    ? content
    : {
        ...content,
        fixedPrice: null,
        lines: content.lines.map((line) => ({ ...line, unitPrice: null, unitCost: null })),
      };

export const warningsOf = (content: BookContent) => checkProcedure(content);

/** The job of the order that shares most taking apart with a job of the book, as its own version says; null for none. */
async function sharedTakingApart(context: Context, orderId: string, bookJobId: string) {
  const jobs = await context.tx
    .selectFrom('job')
    .innerJoin('book_job_version', 'book_job_version.id', 'job.book_job_version_id')
    .select(['job.id as jobId', 'book_job_version.id', 'book_job_version.content'])
    .where('job.work_order_id', '=', orderId)
    .where('job.taken_out', '=', 0)
    .where('job.moved_to', 'is', null)
    .orderBy('job.place')
    .execute();
  const shares = jobs.flatMap(({ jobId, ...version }) =>
    bookContent(version)
      .goesWith.filter((one) => one.bookJobId === bookJobId && one.hoursLess > 0)
      .map(({ hoursLess }) => ({ jobId, hoursLess })),
  );
  return shares.sort((a, b) => b.hoursLess - a.hoursLess)[0] ?? null;
}

export const jobBookHandlers: Handlers = {
  'jobBook.list': async (_input, context) => {
    const rows = await context.tx.selectFrom('book_job').select('id').orderBy('title').execute();
    const all = [];
    for (const { id } of rows) {
      const { content, version, inUse } = await newest(context, id);
      all.push({
        id,
        title: content.title,
        car: content.car,
        version: inUse,
        draft: version > inUse ? version : null,
        bookHours: content.bookHours,
        steps: content.steps.length,
        warnings: thingsToMend(warningsOf(content)),
      });
    }
    return { rows: all };
  },
  'jobBook.get': async ({ id, used }, context) => {
    const row = await newest(context, id, used);
    return {
      id,
      versionId: row.versionId,
      version: row.version,
      inUse: row.inUse,
      content: seenContent(context, row.content),
      warnings: warningsOf(row.content),
      lastTimes: await lastTimes(context, id, row.content.bookHours),
    };
  },
  'jobBook.version': async ({ versionId }, context) => {
    const row = await context.tx
      .selectFrom('book_job_version')
      .selectAll()
      .where('id', '=', versionId)
      .executeTakeFirst();
    if (!row) throw notFound('book_job_version', versionId);
    return {
      versionId,
      bookJobId: row.book_job_id,
      version: row.version,
      content: seenContent(context, bookContent(row)),
    };
  },
  'jobBook.save': async ({ id, basedOn, content, draft }, context) => {
    const numbers = content.steps.map((step) => step.n);
    if (numbers.some((n, at) => n !== at + 1)) throw badInput('content.steps', 'steps-out-of-order');
    const warnings = warningsOf(content);
    const wrong = draft ? undefined : warnings.find((warning) => warning.keepsFromBench);
    if (wrong) throw held([{ what: 'procedure-wrong', with: { step: wrong.step, rule: wrong.rule } }]);
    const versionId = newId();
    const before = id === null ? null : await newest(context, id);
    if (before && before.version !== basedOn) {
      throw new Refusal({
        code: 'changed-meanwhile',
        what: 'book_job',
        id: before.id,
        revision: before.version,
        now: before.content,
        yours: content,
      });
    }
    const bookId = before?.id ?? newId();
    const version = (before?.version ?? 0) + 1;
    const inUse = draft ? (before?.inUse ?? 0) : version;
    // A draft of a job that is in use leaves what the bench gets as it is, its title too.
    if (!before) await context.write.insert('book_job', { id: bookId, title: content.title, version: inUse });
    else if (!draft || inUse === 0)
      await context.write.update('book_job', bookId, { title: content.title, version: inUse });
    await context.write.insert('book_job_version', {
      id: versionId,
      book_job_id: bookId,
      version,
      content: JSON.stringify(content),
      at: context.now,
      person_id: signedIn(context).id,
    });
    return { id: bookId, versionId, version, inUse, warnings };
  },
  'job.fromBook': async ({ orderId, bookJobId, findingId }, context) => {
    const { inUse } = await newest(context, bookJobId);
    if (inUse === 0) throw held([{ what: 'procedure-draft', with: {} }]);
    const { content, versionId } = await newest(context, bookJobId, true);
    const rate = await context.tx
      .selectFrom('labour_rate')
      .select('price')
      .orderBy('usual', 'desc')
      .orderBy('place')
      .limit(1)
      .executeTakeFirst();
    const parts = await context.tx.selectFrom('part').select(['id', 'number', 'price']).execute();
    const blank = { discount: null, billing: 'typed' as const, book: 0, overlap: 0, overlapJobId: null, people: [] };
    const shared = await sharedTakingApart(context, orderId, bookJobId);
    const lines = content.lines.map((line) => {
      const part = parts.find((one) => line.partNumber !== '' && one.number === line.partNumber);
      return {
        ...blank,
        kind: line.kind,
        words: line.words,
        partNumber: line.partNumber,
        partId: part?.id ?? null,
        condition: line.condition,
        quantity: line.quantity,
        unit: line.unit,
        unitPrice: line.unitPrice ?? part?.price ?? 0,
        supplier: line.supplier,
        unitCost: line.unitCost,
      };
    });
    const labour = {
      ...blank,
      kind: 'labour' as const,
      words: paperWords(settingsOf(context).language).lineKind.labour,
      partNumber: '',
      partId: null,
      condition: null,
      quantity: 0,
      unit: 'h',
      unitPrice: rate?.price ?? 0,
      billing: 'book' as const,
      book: content.bookHours,
      overlap: Math.min(shared?.hoursLess ?? 0, content.bookHours),
      overlapJobId: shared?.jobId ?? null,
      supplier: '',
      unitCost: null,
    };
    const fields = {
      title: content.title,
      kind: 'charged' as const,
      fixedPrice: content.fixedPrice,
      note: '',
      bearer: '',
      offered: false,
    };
    const added = await addJob(context, orderId, fields, [labour, ...lines], versionId);
    if (findingId !== null) await mendedBy(context, orderId, findingId, added.id);
    return added;
  },
};
