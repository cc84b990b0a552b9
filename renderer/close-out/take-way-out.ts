import { useState } from 'react';
import type { Order } from '../sheet/order.ts';
import { save } from '../sheet/save.ts';
import { remember } from '../sheet/undo.ts';
import type { CallError } from '../state/transport.ts';
import { useDo } from '../state/use-do.ts';
import { t } from '../words/t.ts';
import type { WayOut } from './close-out.ts';

interface Moved {
  readonly letter: string;
  readonly orderId: string;
  readonly number: number;
}

interface TakeWayOut {
  readonly take: (way: WayOut) => void;
  readonly busy: boolean;
  readonly error: CallError | null;
  /** The job that was moved away last, and to which order. */
  readonly moved: Moved | null;
}

/** Takes a way out: goes to record a yes, gives a line or job, or moves a job to an order of its own. */
export function useTakeWayOut(order: Order, onYes: () => void): TakeWayOut {
  const giveLine = useDo('line.give');
  const giveJob = useDo('job.give');
  const moveJob = useDo('job.moveOut');
  const [moved, setMoved] = useState<Moved | null>(null);
  const doing = [giveLine, giveJob, moveJob];

  const take = async (way: WayOut) => {
    for (const one of doing) one.clear();
    if (way.kind === 'yes') return onYes();
    const job = order.jobs.find((one) => one.id === way.jobId);
    const line = job?.lines.find((one) => one.id === way.lineId);
    const given = { given: true, why: t('closeOut.giveWhy') };
    if (line !== undefined) {
      const answer = await giveLine.run({ id: line.id, revision: line.revision, ...given });
      if (answer.ok) remember({ at: null, words: line.words, run: () => save('line.give', charged(answer.output)) });
    } else if (job !== undefined && way.kind === 'give') {
      const answer = await giveJob.run({ id: job.id, revision: job.revision, ...given });
      if (answer.ok) remember({ at: null, words: job.title, run: () => save('job.give', charged(answer.output)) });
    } else if (job !== undefined) {
      const answer = await moveJob.run({ id: job.id, revision: job.revision });
      if (answer.ok) setMoved({ letter: job.letter, ...answer.output });
    }
  };
  return {
    take: (way) => void take(way),
    busy: doing.some((one) => one.busy),
    error: doing.find((one) => one.error !== null)?.error ?? null,
    moved,
  };
}

/** Charged again, from the row as it stands after it was given. */
function charged({ id, revision }: { readonly id: string; readonly revision: number }) {
  return { id, revision, given: false };
}
