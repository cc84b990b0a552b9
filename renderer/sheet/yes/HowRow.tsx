import { instantToWall } from '../../../core/time/instant.ts';
import { Choice } from '../../parts/Choice.tsx';
import { Field } from '../../parts/Field.tsx';
import { SignaturePad } from '../../parts/SignaturePad.tsx';
import { bestWords } from '../../places/customers/answer-words.ts';
import { useNow } from '../../state/now.ts';
import { useSession } from '../../state/session.ts';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { listWords } from '../../words/list.ts';
import { t } from '../../words/t.ts';
import { saidOf, WAYS } from './draft.ts';
import { QuoteAnswered } from './QuoteAnswered.tsx';
import { reachedOf } from './read-draft.ts';
import type { FormProps } from './YesForm.tsx';

/** How it was said, each way with its own rows; when, and who took it, are always there. */
export function HowRow({ order, quotes, draft, onDraft, upTo, wrongs }: FormProps) {
  const writing = useWriting();
  const now = useNow(60_000);
  const by = useSession((session) => session.person?.name ?? '');
  const wall = instantToWall(now, writing.zone);
  const said = order.jobs.filter((job) => saidOf(order, draft, job).answer === 'yes').map((job) => job.letter);
  return (
    <section>
      <h3>{t('decision.how')}</h3>
      <div>
        <Choice
          label={t('decision.how')}
          quiet
          value={draft.way}
          options={WAYS.map((value) => ({ value, words: t(`decision.way-${value}`) }))}
          onChange={(way) => onDraft({ way, reached: null })}
        />
        {draft.way === 'signed' ? (
          <div data-place="strokes">
            <SignaturePad
              words={
                said.length === 0
                  ? t('decision.signForNo')
                  : t('decision.signFor', { letters: listWords(said), sum: upTo })
              }
              strokes={draft.strokes}
              onChange={(strokes) => onDraft({ strokes })}
              onPaper={draft.onPaper}
              setOnPaper={(onPaper) => onDraft({ onPaper })}
            />
            {wrongs.strokes === undefined ? null : (
              <p className="wrong-words" role="alert">
                {wrongs.strokes}
              </p>
            )}
          </div>
        ) : null}
        <div className="how-fields">
          {draft.way === 'signed' ? null : (
            <div data-place="reached">
              <Field
                label={t(`decision.reached-${draft.way}`)}
                value={reachedOf(order, draft)}
                onChange={(reached) => onDraft({ reached })}
                error={wrongs.reached ?? null}
                maxLength={120}
              />
            </div>
          )}
          <div data-place="at">
            <Field
              label={t('decision.when')}
              type="datetime-local"
              past
              value={draft.at ?? `${wall.date}T${wall.time}`}
              onChange={(at) => onDraft({ at })}
              onLeave={() => onDraft({ at: draft.at === '' ? null : draft.at })}
              error={wrongs.at ?? null}
            />
          </div>
          <Field label={t('decision.takenBy')} value={by} readOnly />
        </div>
        {draft.way === 'phone' ? <BestToRing customerId={order.customer.id} /> : null}
        {draft.at === null ? null : <p className="small ink-2">{t('decision.enteredLate', { by })}</p>}
        {draft.way === 'message' ? (
          <QuoteAnswered order={order} quotes={quotes} draft={draft} onDraft={onDraft} />
        ) : null}
      </div>
    </section>
  );
}

/** When they answer the phone best, where enough tries say so. */
function BestToRing({ customerId }: { readonly customerId: string }) {
  const writing = useWriting();
  const best = useAsk('customer.answers', { id: customerId }).data?.bestPhone ?? null;
  if (best === null) return null;
  return <p className="small ink-2">{t('decision.bestToRing', { best: bestWords(best, writing) })}</p>;
}
