import { whatChanged } from '../../core/bench/what-changed.ts';
import type { Handlers } from '../context.ts';
import { bookContent } from '../order/book-content.ts';
import { notFound } from '../refusal.ts';

/** Versions of a job that are listed. */
const MOST = 20;

export const bookVersionsHandlers: Handlers = {
  'jobBook.versions': async ({ id }, context) => {
    const { tx } = context;
    const job = await tx.selectFrom('book_job').select('version').where('id', '=', id).executeTakeFirst();
    if (!job) throw notFound('book_job', id);
    const versions = await tx
      .selectFrom('book_job_version')
      .leftJoin('person', 'person.id', 'book_job_version.person_id')
      .selectAll('book_job_version')
      .select('person.name as by')
      .where('book_job_id', '=', id)
      .orderBy('version', 'desc')
      // One more than is shown, to compare the last with.
      .limit(MOST + 1)
      .execute();
    const used = await tx
      .selectFrom('job')
      .innerJoin('book_job_version', 'book_job_version.id', 'job.book_job_version_id')
      .select(['job.book_job_version_id as versionId', 'job.work_order_id as orderId'])
      .where('book_job_version.book_job_id', '=', id)
      .execute();
    return {
      rows: versions.slice(0, MOST).map((row, at) => {
        const before = versions[at + 1];
        return {
          ...{ versionId: row.id, version: row.version, at: row.at, by: row.by ?? '' },
          inUse: row.version === job.version,
          orders: new Set(used.filter((one) => one.versionId === row.id).map((one) => one.orderId)).size,
          changed: before === undefined ? null : whatChanged(bookContent(before), bookContent(row)),
        };
      }),
    };
  },
};
