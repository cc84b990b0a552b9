import { Stamp } from '../parts/Stamp.tsx';
import { Waiting } from '../parts/Waiting.tsx';
import { useNow } from '../state/now.ts';
import { useWriting } from '../state/shop.ts';
import { amountText } from '../words/figures.ts';
import { listWords } from '../words/list.ts';
import { t } from '../words/t.ts';
import { dayText, timeText } from '../words/times.ts';
import { type Decision, lettersOf, type Order } from './order.ts';
import { InWriting } from './yes/InWriting.tsx';
import { useSaidNow } from './yes/said-now.ts';

/** The right margin: every yes as a stamp with the letters that it covers; dashed what waits for one. */
export function Margin({ order }: { readonly order: Order }) {
  const writing = useWriting();
  const now = useNow(60_000);
  const quote = order.papers.findLast((paper) => paper.kind === 'quote');
  const sent = quote?.sent.at(-1);
  const held = order.yes.held;
  return (
    <aside className="margin" aria-label={t('sheet.margin')}>
      {order.decisions.map((one, i) => (
        <Said key={one.id} order={order} one={one} right={i % 2 === 1} now={now} />
      ))}
      <InWriting
        lacks={order.yes.unwritten}
        letters={order.jobs.filter((job) => job.covered).map((job) => job.letter)}
      />
      {held.length === 0 ? null : (
        <Waiting stop={order.decisions.length > 0 && !order.yes.inside}>
          {t('sheet.waits', { n: held.length, letters: listWords(held.map((job) => job.letter)) })}
          {order.yes.heldSum === undefined ? null : (
            <>
              <br />
              <b>{amountText(order.yes.heldSum, writing)}</b>
            </>
          )}
          {quote === undefined ? null : (
            <>
              <br />
              {sent === undefined
                ? t('sheet.quoteNotSent')
                : t('sheet.quoteSent', { when: `${dayText(sent.at, writing, now)}, ${timeText(sent.at, writing)}` })}
            </>
          )}
        </Waiting>
      )}
    </aside>
  );
}

interface SaidProps {
  readonly order: Order;
  readonly one: Decision;
  readonly right: boolean;
  readonly now: number;
}

function Said({ order, one, right, now }: SaidProps) {
  const said = useSaidNow((state) => state.last);
  const fresh = said?.decisionId === one.id;
  const writing = useWriting();
  const when = `${dayText(one.at, writing, now)}, ${timeText(one.at, writing)}`;
  const lettersWith = (answer: 'yes' | 'no' | 'later') =>
    listWords(
      lettersOf(
        order,
        one.jobs.filter((job) => job.answer === answer).map((job) => job.jobId),
      ),
    );
  const [yes, no, later] = [lettersWith('yes'), lettersWith('no'), lettersWith('later')];
  return (
    <div className="said-once">
      {yes === '' ? (
        <p className="small">
          <b>{one.spoken.name}</b>
          <br />
          {when}
        </p>
      ) : (
        <Stamp
          lines={[one.spoken.name, t(`decision.stamp-${one.way}`, { by: one.takenBy }), when]}
          upTo={amountText(one.ceiling, writing)}
          right={right}
          fresh={fresh}
        />
      )}
      <p className="caption">
        {[
          yes === '' ? '' : t('sheet.covers', { letters: yes }),
          no === '' ? '' : t('sheet.saidNo', { letters: no }),
          later === '' ? '' : t('sheet.saidLater', { letters: later }),
          one.lateBy === '' ? '' : t('sheet.enteredLate', { late: one.lateBy }),
        ]
          .filter((words) => words !== '')
          .join('; ')}
      </p>
      {fresh ? (
        <p className="caption" role="status">
          <b>
            {said.ceiling === null
              ? t('decision.answerRecorded')
              : t('decision.recorded', { sum: amountText(said.ceiling, writing) })}
          </b>{' '}
          {t('decision.followed')}
        </p>
      ) : null}
    </div>
  );
}
