import { type NextMove, nextMove } from '../../core/order/next.ts';
import { type Stop, stopsOf } from '../../core/order/stops.ts';
import { wallToInstant } from '../../core/time/instant.ts';
import type { Context } from '../context.ts';
import { finalChecksOf } from './final-checks.ts';
import type { Loaded } from './load.ts';
import { balanceOf, letterOf, type Reckoned } from './reckon.ts';
import { missingOf, stepsOf } from './steps.ts';

/** Whether work waits for the order number of whoever pays, who wants it there first. */
export const poHoldsWork = (loaded: Loaded): boolean => {
  const account = loaded.payer ?? loaded.customer;
  return account.po_required === 1 && account.po_before === 'work' && loaded.order.po_number === '';
};

const forgottenEntries = (loaded: Loaded) => {
  const corrected = new Set(loaded.entries.flatMap((entry) => (entry.corrects === null ? [] : [entry.corrects])));
  return loaded.entries.filter((entry) => entry.off_at === null && !corrected.has(entry.id));
};

/** What was issued, less what was put back, by move; in thousandths. */
const issuedStill = (loaded: Loaded) => {
  const back = new Map<string, number>();
  for (const move of loaded.moves)
    if (move.undoes !== null) back.set(move.undoes, (back.get(move.undoes) ?? 0) + move.quantity);
  return loaded.moves
    .filter((move) => move.what === 'issued')
    .map((move) => ({ move, quantity: -move.quantity - (back.get(move.id) ?? 0) }))
    .filter(({ quantity }) => quantity > 0);
};

/** What was issued to the order's jobs and stands on no line of its sheet. */
export function onNoLine(loaded: Loaded) {
  const lineIds = new Set(loaded.lines.map((line) => line.id));
  return issuedStill(loaded).filter(({ move }) => move.line_id === null || !lineIds.has(move.line_id));
}

/** What the supplier's bills for a line came to, minor units; null when none has come. */
export function billOf(loaded: Loaded, lineId: string): number | null {
  const bills = loaded.awaited.flatMap((row) => (row.line_id === lineId && row.cost !== null ? [row.cost] : []));
  return bills.length === 0 ? null : bills.reduce((sum, cost) => sum + cost, 0);
}

/**
 * Findings made since work began that are no job yet: they are to be priced and asked about. What only wants watching is
 * told and not asked.
 */
function unpricedFindings(loaded: Loaded): number {
  const began = [...loaded.entries, ...loaded.running].reduce<number | null>(
    (first, clock) => Math.min(first ?? clock.on_at, clock.on_at),
    null,
  );
  if (began === null) return 0;
  return loaded.findings.filter((row) => row.job_id === null && row.urgency !== 'watch' && row.at >= began).length;
}

/** What holds the invoice of this order now. */
export function stopsOfOrder(loaded: Loaded, reckoned: Reckoned, seesPrices: boolean): Stop[] {
  const letter = (jobId: string) => letterOf(loaded.jobs.find((job) => job.id === jobId)?.place ?? 0);
  const name = (personId: string) => loaded.people.get(personId)?.name ?? '';
  const onSheet = loaded.jobs.filter((job) => reckoned.onSheet.has(job.id));
  const owners = new Set([...loaded.people.values()].filter(({ role }) => role === 'owner').map(({ id }) => id));
  const missing = onSheet.map((job) => ({ job: letter(job.id), ...missingOf(stepsOf(loaded, job.id), owners) }));
  const door = JSON.parse(loaded.order.door) as { oldParts?: string };
  return stopsOf({
    openClocks: loaded.running.map((clock) => name(clock.person_id)),
    forgottenClocks: forgottenEntries(loaded).map((entry) => name(entry.person_id)),
    heldJobs: reckoned.yes.heldJobs.map(letter),
    excess: reckoned.yes.coveredExcess,
    ownMaximum: loaded.order.own_maximum,
    overMaximum: reckoned.overMaximum,
    seesPrices,
    poMissing: (loaded.payer ?? loaded.customer).po_required === 1 && loaded.order.po_number === '',
    issuedWithoutLine: onNoLine(loaded).map(({ move }) => move.words),
    torqueMissing: missing.flatMap(({ job, torque }) => torque.map((one) => ({ job, ...one }))),
    secondMissing: missing.flatMap(({ job, second }) => second.map((step) => ({ job, step }))),
    stepsFailed: missing.flatMap(({ job, failed }) => failed.map((step) => ({ job, step }))),
    stepsLeftOut: missing.flatMap(({ job, leftOut }) => leftOut.map((step) => ({ job, step }))),
    finalChecksMissing: finalChecksOf(loaded, onSheet)
      .filter(({ done }) => done === null)
      .map(({ job }) => letter(job.id)),
    quarantined: loaded.quarantines.filter((row) => row.lifted_at === null).map((row) => row.words),
    mileageOutMissing: loaded.order.mileage_in !== null && loaded.order.mileage_out === null,
    outsideBillMissing: loaded.lines
      .filter((line) => line.kind === 'outside' && reckoned.onSheet.has(line.job_id) && line.unit_cost === null)
      .filter((line) => billOf(loaded, line.id) === null)
      .map((line) => line.words),
    oldPartsUnanswered: ['show', 'return'].includes(door.oldParts ?? '') && loaded.order.old_parts_answer === '',
  });
}

const latest = (a: number | null, b: number | null) => (a === null || b === null ? (a ?? b) : Math.max(a, b));

/** Whose move it is on this order, worked out from its rows; without the sum that is owed for whoever may not see prices. */
export function nextOf(
  loaded: Loaded,
  reckoned: Reckoned,
  { now, today, seesPrices, settings }: Pick<Context, 'now' | 'today' | 'seesPrices' | 'settings'>,
): NextMove {
  const quote = loaded.papers.findLast((paper) => paper.kind === 'quote');
  const invoice = loaded.papers.findLast((paper) => paper.kind === 'invoice');
  const waits = loaded.awaited
    .filter((row) => row.arrived_at === null)
    .sort((a, b) => (a.due_on ?? '9').localeCompare(b.due_on ?? '9'));
  const first = waits[0];
  const onSheet = loaded.jobs.filter((job) => reckoned.onSheet.has(job.id));
  const steps = onSheet.flatMap((job) => stepsOf(loaded, job.id));
  const settledSteps = steps.every(({ last }) => last !== null && last.state !== 'open');
  const lastOff = loaded.entries.reduce<number | null>(
    (latest, entry) => Math.max(latest ?? 0, entry.off_at ?? entry.on_at),
    null,
  );
  const worked =
    onSheet.length > 0 &&
    onSheet.every(
      (job) =>
        loaded.entries.some((entry) => entry.job_id === job.id) ||
        !loaded.lines.some((line) => line.job_id === job.id && line.kind === 'labour'),
    );
  const { order } = loaded;
  const next = nextMove(
    {
      openedAt: order.opened_at,
      arrivedAt: order.arrived_at,
      // Waited for from the day after, and at once where it was written down that it did not come; since when it was booked for.
      bookedFor:
        loaded.lastPlace && (loaded.lastPlace.day < today || loaded.lastPlace.no_show_at !== null)
          ? wallToInstant(`${loaded.lastPlace.day}T${loaded.lastPlace.from_time}`, settings?.zone ?? 'UTC')
          : null,
      cancelledAt: order.cancelled_at,
      handedOverAt: order.handed_over_at,
      promiseAt: order.promise_at,
      jobs: onSheet.length,
      findings: loaded.findings.length,
      unpriced: unpricedFindings(loaded),
      held: reckoned.yes.heldJobs.length,
      over: reckoned.yes.coveredExcess > 0,
      anyYes: reckoned.yes.covered.size > 0,
      quotedAt: quote?.issued_at ?? null,
      quoteStands: quote?.gross === reckoned.totals.gross,
      quoteSent: loaded.sent.some((row) => row.paper_id === quote?.id),
      triedAt: latest(loaded.tries.at(-1)?.at ?? null, loaded.toldAt),
      clockOnAt: loaded.running.reduce<number | null>(
        (first, clock) => (clock.kind === 'work' ? Math.min(first ?? clock.on_at, clock.on_at) : first),
        null,
      ),
      clockedAt: lastOff,
      forgottenClocks: forgottenEntries(loaded).length,
      awaited: first
        ? {
            words: first.words,
            supplier: first.supplier,
            orderedAt: first.ordered_at,
            late: first.due_on !== null && first.due_on < today,
          }
        : null,
      workDone: worked && settledSteps,
      invoicedAt: invoice?.issued_at ?? null,
      balance: balanceOf(loaded),
    },
    now,
  );
  return moveSeen(next, seesPrices);
}

/** The next move, without the sum that is owed for whoever may not see prices. */
export function moveSeen(next: NextMove, seesPrices: boolean): NextMove {
  if (seesPrices) return next;
  const { balance: _, ...figures } = next.with;
  return { ...next, with: figures };
}
