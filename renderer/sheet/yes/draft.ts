import { create } from 'zustand';
import type { InputOf } from '../../../core/contract/index.ts';
import type { Strokes } from '../../parts/SignaturePad.tsx';
import type { Job, Order } from '../order.ts';

type Input = InputOf<'decision.record'>;
export type Answer = Input['jobs'][number]['answer'];
export type Way = Input['way'];
export const WAYS: readonly Way[] = ['signed', 'phone', 'message', 'person'];

/** What is said of one job on the form; `unasked` leaves it as it stands. */
export interface Said {
  readonly answer: Answer | 'unasked';
  readonly risk: string;
  readonly unsafe: boolean;
  /** Days until it is asked again; null as the shop has it. */
  readonly askInDays: number | null;
}

/** What stands on the form. It is kept while the window is open: leaving the form loses nothing. */
export interface YesDraft {
  readonly said: Readonly<Record<string, Partial<Said>>>;
  /** As typed, "+12.00" for so much more; null as proposed. */
  readonly upTo: string | null;
  /** Which of the people; null for the first that may. */
  readonly speaker: string | null;
  readonly name: string;
  readonly way: Way;
  /** Number, address or who else heard it, as typed; null as known of the customer. */
  readonly reached: string | null;
  /** Which of our quotes a message answers: its paper's id, '' for none, null for the newest. */
  readonly quote: string | null;
  readonly words: string;
  readonly strokes: Strokes | null;
  readonly onPaper: boolean;
  readonly oldParts: 'show' | 'return' | 'dispose' | null;
  /** Wall time 'YYYY-MM-DDTHH:MM'; null for now. */
  readonly at: string | null;
}

const EMPTY: YesDraft = {
  said: {},
  upTo: null,
  speaker: null,
  name: '',
  way: 'phone',
  reached: null,
  quote: null,
  words: '',
  strokes: null,
  onPaper: false,
  oldParts: null,
  at: null,
};

export type ChangeDraft = (change: Partial<YesDraft>) => void;

const useDrafts = create<{ readonly byOrder: Readonly<Record<string, YesDraft>> }>(() => ({ byOrder: {} }));

/** The form of an order's yes, as it stands at this window. */
export function useYesDraft(orderId: string): readonly [YesDraft, ChangeDraft] {
  const draft = useDrafts((state) => state.byOrder[orderId]) ?? EMPTY;
  const change: ChangeDraft = (some) =>
    useDrafts.setState(({ byOrder }) => ({
      byOrder: { ...byOrder, [orderId]: { ...(byOrder[orderId] ?? EMPTY), ...some } },
    }));
  return [draft, change];
}

/** The yes is recorded: the next form begins empty. */
export function forgetDraft(orderId: string): void {
  useDrafts.setState(({ byOrder }) => {
    const { [orderId]: gone, ...rest } = byOrder;
    return gone === undefined ? { byOrder } : { byOrder: rest };
  });
}

/**
 * What is said of a job, where nothing was chosen yet: yes to what waits for one; nothing to what is offered, was
 * declined, or has its yes. Where only the sum has grown, the jobs with a yes are asked again.
 */
export function saidOf(order: Order, draft: YesDraft, job: Job): Said {
  const chosen = draft.said[job.id];
  return { answer: usualAnswer(order, job), risk: '', unsafe: unsafeFound(order, job), askInDays: null, ...chosen };
}

function usualAnswer(order: Order, job: Job): Said['answer'] {
  const waits = (one: Job) => !one.covered && !one.offered && one.answer === 'none';
  const paid = order.jobs.some((one) => waits(one) && one.kind === 'charged');
  if (waits(job)) return job.kind === 'charged' || !paid ? 'yes' : 'unasked';
  const onlyMore = !order.jobs.some(waits) && (order.yes.coveredExcess ?? 0) > 0;
  return job.covered && onlyMore ? 'yes' : 'unasked';
}

/** What the answer would be once recorded. */
export function answerAfter(order: Order, draft: YesDraft, job: Job): Job['answer'] {
  const { answer } = saidOf(order, draft, job);
  return answer === 'unasked' ? job.answer : answer;
}

function unsafeFound(order: Order, job: Job): boolean {
  return order.findings.some((finding) => finding.jobId === job.id && finding.urgency === 'unsafe');
}
