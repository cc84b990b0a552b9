import type { InputOf } from '../../../core/contract/index.ts';
import { wallToInstant } from '../../../core/time/instant.ts';
import { amountText, readAmount, type Writing } from '../../words/figures.ts';
import { listWords } from '../../words/list.ts';
import { t } from '../../words/t.ts';
import type { Job, Order } from '../order.ts';
import { saidOf, type YesDraft } from './draft.ts';
import type { Quote } from './moved.ts';
import { type Speaker, speakersOf } from './speakers.ts';

type Input = InputOf<'decision.record'>;
export type Place = 'jobs' | 'upTo' | 'who' | 'reached' | 'strokes' | 'at';
export type Wrongs = Readonly<Partial<Record<Place, string>>>;

/** The ceiling that is typed: a total, or "+" and so much more than the last; null where it is no sum. */
export function readUpTo(typed: string, writing: Writing): Input['upTo'] {
  const text = typed.trim();
  const plus = text.startsWith('+');
  const sum = readAmount(plus ? text.slice(1).trim() : text, writing);
  if (sum === null || sum < 0) return null;
  return plus ? { plus: sum } : { total: sum };
}

/** What the ceiling would be, minor units, or null. */
export function ceilingOf(upTo: Input['upTo'], order: Order): number | null {
  if (upTo === null) return null;
  return 'total' in upTo ? upTo.total : (order.yes.ceiling ?? 0) + upTo.plus;
}

/** Who speaks: who is chosen, else the owner for free work alone, else the customer. */
export function speakerOf(order: Order, draft: YesDraft): Speaker {
  const all = speakersOf(order);
  const said = order.jobs.filter((job) => saidOf(order, draft, job).answer === 'yes');
  const usual = said.length > 0 && said.every((job) => job.kind !== 'charged') ? 'owner' : 'customer';
  const key = draft.speaker ?? usual;
  return all.find((one) => one.key === key) ?? { key: 'other', name: '', role: 'customer', limit: null };
}

/** What was reached, as typed or as known of the customer. */
export function reachedOf(order: Order, draft: YesDraft): string {
  if (draft.reached !== null) return draft.reached;
  if (draft.way === 'phone') return order.customer.phone;
  return draft.way === 'message' ? order.customer.email || order.customer.phone : '';
}

/** Which quote is answered: the one chosen for a message, else the newest where the sheet still stands as it says. */
export function answeredQuote(order: Order, draft: YesDraft, quotes: readonly Quote[]): Quote | null {
  const newest = quotes.at(-1) ?? null;
  if (draft.way === 'message') {
    return draft.quote === null ? newest : (quotes.find((quote) => quote.paperId === draft.quote) ?? null);
  }
  return newest !== null && newest.gross === order.yes.onSheet ? newest : null;
}

/** Jobs said yes to by a message that answers a version in which they do not stand: an "ok" to it does not cover them. */
export function notInQuote(order: Order, draft: YesDraft, quote: Quote | null): Job[] {
  if (draft.way !== 'message' || quote === null) return [];
  return order.jobs.filter(
    (job) =>
      saidOf(order, draft, job).answer === 'yes' && !job.offered && !quote.jobs.some((one) => one.jobId === job.id),
  );
}

interface Read {
  readonly order: Order;
  readonly draft: YesDraft;
  readonly quotes: readonly Quote[];
  /** The ceiling as it stands in its field. */
  readonly upTo: string;
  readonly writing: Writing;
  readonly now: number;
}

/** What is sent, or what does not fit yet, each said at its own place. */
export function readDraft({ order, draft, quotes, upTo, writing, now }: Read): Input | { readonly wrongs: Wrongs } {
  const answered = order.jobs
    .map((job) => ({ job, said: saidOf(order, draft, job) }))
    .filter(({ said }) => said.answer !== 'unasked');
  const yes = answered.filter(({ said }) => said.answer === 'yes').map(({ job }) => job);
  const typed = readUpTo(upTo, writing);
  const ceiling = yes.length === 0 ? null : ceilingOf(typed, order);
  const speaker = speakerOf(order, draft);
  const name = speaker.name === '' && speaker.role !== 'owner' ? draft.name.trim() : speaker.name;
  const reached = reachedOf(order, draft).trim();
  const at = draft.at === null ? null : readWall(draft.at, writing.zone);
  const free = yes.filter((job) => job.kind !== 'charged').map((job) => job.letter);
  const unsigned = answered
    .filter(({ said }) => said.answer === 'no' && said.unsafe && draft.way !== 'signed')
    .map(({ job }) => job.letter);

  const wrongs: Partial<Record<Place, string>> = {};
  if (answered.length === 0) wrongs.jobs = t('decision.noneNamed');
  if (unsigned.length > 0) wrongs.jobs = t('decision.unsafeSign', { letters: listWords(unsigned) });
  if (yes.length > 0 && ceiling === null) wrongs.upTo = t('decision.upToUnread');
  if (ceiling !== null && order.ownMaximum !== null && ceiling > order.ownMaximum)
    wrongs.upTo = t('decision.overOwnMaximum', { sum: amountText(order.ownMaximum, writing) });
  if (name === '') wrongs.who = t(speaker.role === 'owner' ? 'decision.ownerHeld' : 'decision.nameNeeded');
  if (free.length > 0 && speaker.role !== 'owner')
    wrongs.who = t('decision.ownerNeeded', { letters: listWords(free), n: free.length });
  const charged = yes.filter((job) => job.kind === 'charged').map((job) => job.letter);
  if (charged.length > 0 && speaker.role === 'owner')
    wrongs.who = t('decision.customerNeeded', { letters: listWords(charged), n: charged.length });
  if (ceiling !== null && speaker.limit !== null && ceiling > speaker.limit)
    wrongs.who = t('decision.overLimit', { name, sum: amountText(speaker.limit, writing) });
  if (draft.way === 'phone' && reached === '') wrongs.reached = t('decision.numberNeeded');
  if (draft.way === 'signed' && draft.onPaper) wrongs.strokes = t('decision.paperWay');
  else if (draft.way === 'signed' && draft.strokes === null) wrongs.strokes = t('decision.signatureNeeded');
  if (draft.at !== null && (at === null || at > now))
    wrongs.at = t(at === null ? 'decision.timeUnread' : 'decision.timeToCome');
  if (Object.keys(wrongs).length > 0) return { wrongs };

  return {
    orderId: order.id,
    quotePaperId: answeredQuote(order, draft, quotes)?.paperId ?? null,
    jobs: answered.map(({ job, said }) => {
      const no = said.answer !== 'yes';
      return {
        jobId: job.id,
        answer: said.answer === 'unasked' ? 'later' : said.answer,
        risk: no ? said.risk : '',
        unsafe: no && said.unsafe,
        askAgainDays: no ? said.askInDays : null,
      };
    }),
    upTo: yes.length === 0 ? null : typed,
    spoken: { name, role: speaker.role },
    way: draft.way,
    reached: draft.way === 'signed' ? '' : reached,
    words: draft.words,
    strokes: draft.way === 'signed' ? draft.strokes : null,
    oldParts: draft.oldParts,
    at,
  };
}

function readWall(wall: string, zone: string): number | null {
  try {
    return wallToInstant(wall, zone);
  } catch {
    return null;
  }
}
