import type { JobRow } from '../tables.ts';
import { bookContent } from './book-content.ts';
import type { Loaded } from './load.ts';

/** The final lists that these jobs want gone through before the car leaves, each with the last time that was done. */
export function finalChecksOf(loaded: Loaded, jobs: readonly JobRow[]) {
  return jobs.flatMap((job) => {
    const version = loaded.versions.find((one) => one.id === job.book_job_version_id);
    const listId = version === undefined ? null : bookContent(version).finalCheckId;
    if (listId === null) return [];
    return [{ job, listId, done: loaded.checks.findLast((row) => row.check_list_id === listId) ?? null }];
  });
}
