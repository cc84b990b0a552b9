import { held } from '../refusal.ts';
import type { Loaded } from './load.ts';
import { countedMinutes } from './reckon.ts';
import { doersOf, stepsOf } from './steps.ts';

/**
 * Ids of those who did the work of an order, or of one of its jobs: who did its steps and tightened its bolts; where no
 * step was ticked, whoever clocked on.
 */
export function doersOfOrder(loaded: Loaded, jobId: string | null): ReadonlySet<string> {
  const jobs = loaded.jobs.filter((job) => jobId === null || job.id === jobId);
  const stepped = new Set(jobs.flatMap((job) => [...doersOf(stepsOf(loaded, job.id))]));
  if (stepped.size > 0) return stepped;
  const clocked = [...loaded.people.keys()].filter((personId) =>
    jobs.some(
      (job) =>
        countedMinutes(loaded.entries, job.id, personId) > 0 ||
        loaded.running.some((clock) => clock.job_id === job.id && clock.person_id === personId),
    ),
  );
  return new Set(clocked);
}

/** What checks the work is for somebody who did none of it. */
export function heldForDoers(loaded: Loaded, jobId: string | null, personId: string): void {
  if (doersOfOrder(loaded, jobId).has(personId)) throw held([{ what: 'by-other', with: {} }]);
}
