import type { CSSProperties } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { t } from '../../words/t.ts';
import { nearText } from '../../words/times.ts';
import { answersWords } from './answer-words.ts';
import './answers.css';

type Answers = OutputOf<'customer.answers'>;
type Try = Answers['tries'][number];

const WAYS = ['message', 'phone'] as const;
const HOUR = 60;
/** The day as it is drawn at least; earlier and later tries stretch it. */
const OPENS = 7;
const CLOSES = 19;

/** The hours of the day at which they were tried: filled answered, hollow nobody, the best hours shaded. */
export function AnswerHours({ id }: { readonly id: string }) {
  const writing = useWriting();
  const { data, error } = useAsk('customer.answers', { id });
  if (data === undefined) return error ? <p role="alert">{errorSentence(error, writing)}</p> : null;
  return (
    <>
      <p className="small ink-2">
        {answersWords(data, writing)} {data.tries.length === 0 ? null : t('customers.answersKey')}
      </p>
      {data.tries.length === 0 ? null : <Hours answers={data} />}
    </>
  );
}

function Hours({ answers }: { readonly answers: Answers }) {
  const writing = useWriting();
  const { tries, best } = answers;
  const from = Math.min(OPENS, ...tries.map((one) => Math.floor(one.minute / HOUR)));
  const to = Math.max(CLOSES, ...tries.map((one) => Math.ceil(one.minute / HOUR)));
  const at = (minute: number) => `${((minute / HOUR - from) * 100) / (to - from)}%`;
  const ticks = Array.from({ length: Math.floor((to - from) / 2) + 1 }, (_, n) => from + 2 * n);
  const place = (minute: number): CSSProperties => ({ left: at(minute) });
  return (
    <div className="answers" role="img" aria-label={spoken(tries)}>
      {best === null ? null : (
        <div className="answers-best">
          <i style={{ left: at(best.from), right: `${100 - Number.parseFloat(at(best.to))}%` }} />
        </div>
      )}
      {WAYS.map((way) => (
        <div key={way} className="answers-way">
          <span>{t(`customers.answers-${way}`)}</span>
          <div>
            {tries
              .filter((one) => one.way === way)
              .map((one) => (
                <i
                  key={`${one.at} ${one.answered}`}
                  className={one.answered ? 'answered' : 'nobody'}
                  style={place(one.minute)}
                  title={`${nearText(one.at, writing, Date.now())}: ${t(one.answered ? 'customers.answered' : 'customers.nobody')}`}
                />
              ))}
          </div>
        </div>
      ))}
      <div className="answers-way answers-hours">
        <span />
        <div>
          {ticks.map((hour) => (
            <i key={hour} style={place(hour * HOUR)}>
              {hour}
            </i>
          ))}
        </div>
      </div>
    </div>
  );
}

/** The drawing for who hears it: how many tries of each way, and how many were answered. */
const spoken = (tries: readonly Try[]) =>
  WAYS.map((way) => {
    const mine = tries.filter((one) => one.way === way);
    return t('customers.answersSpoken', {
      way: t(`customers.answers-${way}`),
      answered: mine.filter((one) => one.answered).length,
      tries: mine.length,
    });
  }).join('; ');
