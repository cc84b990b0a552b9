import { Field } from '../../parts/Field.tsx';
import { useWriting } from '../../state/shop.ts';
import { amountText } from '../../words/figures.ts';
import { listWords } from '../../words/list.ts';
import { t } from '../../words/t.ts';
import { answerAfter, saidOf } from './draft.ts';
import type { FormProps } from './YesForm.tsx';

/** Up to how much, for all jobs said yes to so far, tax in; what that covers, what stays out, how much room is left. */
export function UpToRow({ order, draft, onDraft, here, upTo, ceiling, wrongs }: FormProps) {
  const writing = useWriting();
  const covered = order.jobs.filter((job) => answerAfter(order, draft, job) === 'yes').map((job) => job.letter);
  const out = order.jobs.map((job) => job.letter).filter((letter) => !covered.includes(letter));
  const room = here === null || ceiling === null ? null : ceiling - here.covered.gross;
  return (
    <section className="up-to">
      <h3>{t('decision.upTo')}</h3>
      <div>
        <div data-place="upTo">
          <Field
            label={t('decision.upToLabel')}
            value={upTo}
            onChange={(typed) => onDraft({ upTo: typed })}
            figure
            autoFocus
            inputMode="text"
            error={wrongs.upTo ?? null}
          />
        </div>
        <p className="covers" aria-live="polite">
          {covered.length === 0 ? null : (
            <>
              <b>{t('decision.coversHead')}</b> {t('decision.coversWords', { letters: listWords(covered) })}
              {room === null ? '.' : null}
              {room !== null && room >= 0 ? t('decision.room', { sum: amountText(room, writing) }) : null}
              {room !== null && room < 0 ? (
                <span className="in-stop semi">{t('decision.short', { sum: amountText(-room, writing) })}</span>
              ) : null}
              <br />
            </>
          )}
          {ceiling === null && order.jobs.every((job) => saidOf(order, draft, job).answer !== 'yes') ? (
            <>
              {t('decision.noYesHere')}
              <br />
            </>
          ) : null}
          {upTo.trim().startsWith('+') && ceiling !== null ? (
            <>
              {t('decision.plusIs', {
                before: amountText(order.yes.ceiling ?? 0, writing),
                sum: amountText(ceiling, writing),
              })}
              <br />
            </>
          ) : null}
          {out.length === 0 ? null : (
            <>
              <b>{t('decision.outHead')}</b> {listWords(out)}.
            </>
          )}
        </p>
      </div>
    </section>
  );
}
