import type { OutputOf } from '../../../core/contract/index.ts';
import { FEWEST_TRIES } from '../../../core/customer/answers.ts';
import type { Writing } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { timeText } from '../../words/times.ts';

type Answers = OutputOf<'customer.answers'>;
type Best = NonNullable<Answers['best']>;

const MINUTE = 60_000;

/** Minutes since midnight as the shop writes times. */
const clockText = (minute: number, writing: Writing) => timeText(minute * MINUTE, { ...writing, zone: 'UTC' });

/** "best 7:30 to 9:30, answered 4 of 4". */
export function bestWords({ from, to, answered, tries }: Best, writing: Writing): string {
  return t('customers.best', { from: clockText(from, writing), to: clockText(to, writing), answered, tries });
}

/** What the tries say in one sentence: the best hours, or why none are named. */
export function answersWords({ tries, best }: Answers, writing: Writing): string {
  if (tries.length === 0) return t('customers.answersNone');
  if (tries.length < FEWEST_TRIES) return t('customers.answersFew', { n: tries.length });
  if (best === null) return t('customers.answersNoBest', { n: tries.length });
  return `${bestWords(best, writing)}.`;
}
