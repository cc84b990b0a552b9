import { useState } from 'react';
import { LINE_KINDS } from '../../core/money/line.ts';
import { goTo } from '../frame/router.ts';
import { MoneyText } from '../parts/MoneyText.tsx';
import { useDo } from '../state/use-do.ts';
import { t } from '../words/t.ts';
import { JobMore } from './edit/JobMore.tsx';
import { LineRow } from './LineRow.tsx';
import { NewLine } from './NewLine.tsx';
import { type Job, jobReckoning, type Order } from './order.ts';
import { SheetCell } from './SheetCell.tsx';
import { save } from './save.ts';
import { TakenOut } from './TakenOut.tsx';
import { remember } from './undo.ts';
import { Wrong } from './Wrong.tsx';

interface Props {
  readonly order: Order;
  readonly job: Job;
  readonly locked: boolean;
  readonly current: boolean;
  readonly onCurrent: () => void;
}

/** A job on the sheet: letter, title, sum, its lines hanging by kind, the last one open for typing. */
export function JobPart({ order, job, locked, current, onCurrent }: Props) {
  const [more, setMore] = useState(false);
  const takeOut = useDo('job.takeOut');
  const moveOut = useDo('job.moveOut');
  const marks = [
    ...(job.kind === 'charged' ? [] : [t(`sheet.jobKind-${job.kind}`), job.bearer]),
    job.fixedPrice === null ? '' : t('sheet.fixedPrice'),
    job.given ? t('sheet.given', { why: job.giveWhy }) : '',
    job.offered && !job.covered ? t('sheet.offered') : '',
    job.answer === 'no' || job.answer === 'later' ? t(`sheet.answer-${job.answer}`) : '',
  ].filter((mark) => mark !== '');
  const kinds = LINE_KINDS.filter((kind) => job.lines.some((line) => line.kind === kind));
  return (
    <section
      className={current ? 'job current' : 'job'}
      aria-label={t('sheet.jobLabel', { letter: job.letter, title: job.title })}
      onFocus={onCurrent}
    >
      <div className="job-head">
        <h3>{job.letter}</h3>
        <SheetCell
          label={t('sheet.jobTitle', { letter: job.letter })}
          hand={`${job.id} title`}
          wraps
          value={job.title}
          revision={job.revision}
          locked={locked}
          save={(title, revision) => save('job.change', { id: job.id, revision, change: { title } })}
          inRow={(row) => String(row.title)}
        />
        {marks.length === 0 ? null : <em>{marks.join(', ')}</em>}
        <b className="figure">
          <MoneyText amount={job.amount} reckoning={jobReckoning(order, job)} />
        </b>
      </div>
      {job.note === '' || more ? null : <p className="job-note">{job.note}</p>}
      {more && !locked ? <JobMore job={job} /> : null}
      {kinds.map((kind) => (
        <div className="kind" key={kind}>
          <h4>{t(`sheet.kind-${kind}`)}</h4>
          <div>
            {job.lines
              .filter((line) => line.kind === kind)
              .map((line) => (
                <LineRow key={line.id} order={order} line={line} locked={locked} />
              ))}
          </div>
        </div>
      ))}
      {locked ? null : (
        <>
          <TakenOut at={job.id} />
          <NewLine job={job} />
          <p className="job-acts">
            <button
              type="button"
              className="link small"
              aria-expanded={more}
              aria-label={t('edit.moreOf', { words: `${job.letter} ${job.title}` })}
              onClick={() => setMore(!more)}
            >
              {t('edit.more')}
            </button>{' '}
            <button
              type="button"
              className="link small"
              onClick={async () => {
                const answer = await takeOut.run({ id: job.id, revision: job.revision });
                if (!answer.ok) return;
                const { id, revision } = answer.output;
                remember({ at: 'sheet', words: job.title, run: () => save('job.putBack', { id, revision }) });
              }}
            >
              {t('sheet.takeOutJob', { letter: job.letter })}
            </button>{' '}
            <button
              type="button"
              className="link small"
              onClick={async () => {
                const answer = await moveOut.run({ id: job.id, revision: job.revision });
                if (answer.ok) goTo('orders', answer.output.orderId);
              }}
            >
              {t('sheet.moveOut', { letter: job.letter })}
            </button>
          </p>
        </>
      )}
      <Wrong error={takeOut.error ?? moveOut.error} />
    </section>
  );
}
