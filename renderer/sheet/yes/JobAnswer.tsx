import { Choice } from '../../parts/Choice.tsx';
import { Stamp } from '../../parts/Stamp.tsx';
import { useNow } from '../../state/now.ts';
import { useSession } from '../../state/session.ts';
import { useWriting } from '../../state/shop.ts';
import { t } from '../../words/t.ts';
import { civilText, dayText, timeText } from '../../words/times.ts';
import type { Job, Order } from '../order.ts';
import type { Said, YesDraft } from './draft.ts';
import { speakerOf } from './read-draft.ts';

const ANSWERS = ['yes', 'no', 'later'] as const;
interface Props {
  readonly order: Order;
  readonly job: Job;
  readonly said: Said;
  readonly draft: YesDraft;
  readonly onSaid: (said: Partial<Said>) => void;
  /** The ceiling on the stamp that will land here; null where none does. */
  readonly stamp: string | null;
}

/** The margin of a job: its yes so far, or Yes, No, Later where its stamp will land. */
export function JobAnswer({ order, job, said, draft, onSaid, stamp }: Props) {
  const writing = useWriting();
  const now = useNow(60_000);
  const label = { letter: job.letter, title: job.title };
  if (job.covered && said.answer === 'unasked') {
    const last = order.decisions.findLast((one) =>
      one.jobs.some((answered) => answered.jobId === job.id && answered.answer === 'yes'),
    );
    return (
      <div className="yes-margin">
        <p className="yes-had">
          <svg width="18" height="18" viewBox="0 0 18 18" aria-hidden="true">
            <circle cx="9" cy="9" r="8" fill="var(--ink)" />
            <path d="M5 9.3l2.8 2.8L13 6.5" stroke="var(--paper)" strokeWidth="2.2" fill="none" />
          </svg>
          <span>{t('decision.yesOn', { day: last === undefined ? '' : dayText(last.at, writing, now) })}</span>
        </p>
        <button
          type="button"
          className="link small"
          aria-label={t('decision.askAgainOf', label)}
          onClick={() => onSaid({ answer: 'yes' })}
        >
          {t('decision.askAgain')}
        </button>
      </div>
    );
  }
  return (
    <div className="yes-margin">
      <Choice
        label={t('decision.answerOf', label)}
        quiet
        joined
        stamp="yes"
        value={said.answer === 'unasked' ? null : said.answer}
        options={ANSWERS.map((value) => ({ value, words: t(`decision.answer-${value}`) }))}
        onChange={(answer) => onSaid({ answer })}
      />
      {said.answer === 'unasked' ? (
        <p className="small ink-2">{t(`decision.unasked-${job.answer === 'yes' ? 'none' : job.answer}`)}</p>
      ) : (
        <button
          type="button"
          className="link small"
          aria-label={t('decision.notAskedOf', label)}
          onClick={() => onSaid({ answer: 'unasked' })}
        >
          {t('decision.notAsked')}
        </button>
      )}
      {stamp === null ? null : <ComingStamp order={order} draft={draft} upTo={stamp} />}
    </div>
  );
}

/** Dashed, where the stamp will land once the yes is recorded. */
function ComingStamp({ order, draft, upTo }: { order: Order; draft: YesDraft; upTo: string }) {
  const writing = useWriting();
  const now = useNow(60_000);
  const by = useSession((session) => session.person?.name ?? '');
  const speaker = speakerOf(order, draft);
  const name = speaker.name === '' ? draft.name.trim() : speaker.name;
  return (
    <Stamp
      coming
      lines={[
        ...(name === '' ? [] : [name]),
        t(`decision.stamp-${draft.way}`, { by }),
        draft.at === null
          ? `${dayText(now, writing, now)}, ${timeText(now, writing)}`
          : [civilText(draft.at.slice(0, 10), writing), draft.at.slice(11)].filter((part) => part !== '').join(', '),
      ]}
      upTo={upTo}
    />
  );
}
