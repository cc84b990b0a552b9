import { useId } from 'react';
import { useNow } from '../../state/now.ts';
import { useWriting } from '../../state/shop.ts';
import { amountText } from '../../words/figures.ts';
import { listWords } from '../../words/list.ts';
import { t } from '../../words/t.ts';
import { nearText } from '../../words/times.ts';
import { lettersOf } from '../order.ts';
import { answeredQuote, notInQuote } from './read-draft.ts';
import type { FormProps } from './YesForm.tsx';

/** Which of ours a message answers: an "ok" to an older version does not cover what stands only in a newer one. */
export function QuoteAnswered({
  order,
  quotes,
  draft,
  onDraft,
}: Pick<FormProps, 'order' | 'quotes' | 'draft' | 'onDraft'>) {
  const writing = useWriting();
  const now = useNow(60_000);
  const name = useId();
  const answered = answeredQuote(order, draft, quotes);
  const missing = notInQuote(order, draft, answered);
  return (
    <fieldset className="choice answers-which">
      <legend>{t('decision.answersWhich')}</legend>
      {quotes.toReversed().map((quote) => {
        const sent = order.papers.find((paper) => paper.id === quote.paperId)?.sent.at(-1);
        return (
          <label key={quote.paperId}>
            <input
              type="radio"
              name={name}
              checked={answered?.paperId === quote.paperId}
              onChange={() => onDraft({ quote: quote.paperId })}
            />
            <span>
              {t('decision.ourVersion', {
                when: nearText(sent?.at ?? quote.issuedAt, writing, now),
                version: quote.version,
                letters: listWords(
                  lettersOf(
                    order,
                    quote.jobs.map((job) => job.jobId),
                  ),
                ),
              })}
            </span>
            <span className="figure">{amountText(quote.gross, writing)}</span>
          </label>
        );
      })}
      <label>
        <input type="radio" name={name} checked={answered === null} onChange={() => onDraft({ quote: '' })} />
        <span>{t('decision.noneOfOurs')}</span>
      </label>
      {missing.length === 0 || answered === null ? null : (
        <p className="small in-heed semi">
          {t('decision.notInVersion', {
            version: answered.version,
            letters: listWords(missing.map((job) => job.letter)),
          })}
        </p>
      )}
    </fieldset>
  );
}
