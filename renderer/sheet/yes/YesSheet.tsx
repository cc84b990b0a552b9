import { useState } from 'react';
import { useKey } from '../../frame/keys.ts';
import { useNow } from '../../state/now.ts';
import { useWriting } from '../../state/shop.ts';
import { wholeText } from '../../words/figures.ts';
import { listWords } from '../../words/list.ts';
import { t } from '../../words/t.ts';
import { dayText, weekdayText } from '../../words/times.ts';
import { type Job, type Order, standsAside } from '../order.ts';
import { type ChangeDraft, type Said, saidOf, type YesDraft } from './draft.ts';
import { JobAnswer } from './JobAnswer.tsx';
import { MovedLines } from './MovedLines.tsx';
import { movedJob, type Quote, versionSaidYesTo } from './moved.ts';
import type { ReckonedHere } from './reckon-here.ts';
import { Told } from './Told.tsx';
import { WouldStand } from './WouldStand.tsx';

interface Props {
  readonly order: Order;
  readonly quotes: readonly Quote[];
  readonly draft: YesDraft;
  readonly onDraft: ChangeDraft;
  readonly here: ReckonedHere | null;
  /** The ceiling to come, as text. */
  readonly upTo: string;
  readonly wrong: string | undefined;
}

/** The sheet while a yes is recorded: which jobs, what moved since the version last said yes to, what is only offered. */
export function YesSheet({ order, quotes, draft, onDraft, here, upTo, wrong }: Props) {
  const writing = useWriting();
  const now = useNow(60_000);
  const since = versionSaidYesTo(order, quotes);
  const lastYes = order.decisions.findLast((one) => one.ceiling !== null);
  const answer = (job: Job, said: Partial<Said>) =>
    onDraft({ said: { ...draft.said, [job.id]: { ...draft.said[job.id], ...said } } });
  const aside = (job: Job) => here !== null && !here.inSum.has(job.id);
  // By what the shop has recorded, so that no row moves under the hand while its answer is chosen.
  const offered = order.jobs.filter(standsAside);
  const inSum = order.jobs.filter((job) => !offered.includes(job));
  const asked = order.jobs.filter((job) => saidOf(order, draft, job).answer !== 'unasked' || !job.covered);
  const [chosen, setChosen] = useState<string | null>(null);
  const at = asked.find((job) => job.id === chosen) ?? asked[0];
  useKey('Y', () => at && answer(at, { answer: 'yes' }));
  useKey('N', () => at && answer(at, { answer: 'no' }));
  useKey('L', () => at && answer(at, { answer: 'later' }));
  const firstYes = order.jobs.find((job) => saidOf(order, draft, job).answer === 'yes');
  const kept = order.jobs.filter((job) => ['no', 'later'].includes(saidOf(order, draft, job).answer));

  const row = (job: Job) => (
    <section
      key={job.id}
      className={['yes-row', job.id === at?.id ? 'current' : '', saidOf(order, draft, job).answer].join(' ').trim()}
      aria-label={t('sheet.jobLabel', { letter: job.letter, title: job.title })}
      onFocus={() => setChosen(job.id)}
    >
      <div className="yes-lines">
        <MovedLines moved={movedJob(order, job, since, here)} aside={aside(job)} />
        <Told job={job} said={saidOf(order, draft, job)} onSaid={(said) => answer(job, said)} />
      </div>
      <JobAnswer
        order={order}
        job={job}
        said={saidOf(order, draft, job)}
        draft={draft}
        onSaid={(said) => answer(job, said)}
        stamp={job.id === firstYes?.id ? upTo : null}
      />
    </section>
  );

  return (
    <div className="yes-sheet" data-place="jobs">
      <Head order={order} quotes={quotes} since={since} />
      {wrong === undefined ? null : (
        <p className="wrong-words" role="alert">
          {wrong}
        </p>
      )}
      {here === null ? null : (
        <div className="yes-cols" aria-hidden="true">
          <span />
          <span className="yes-was">{lastYes === undefined ? '' : dayText(lastYes.at, writing, now)}</span>
          <span>{t('decision.colNow')}</span>
          <span>{t('decision.colMore')}</span>
        </div>
      )}
      {inSum.map((job) => row(job))}
      {here === null ? null : <WouldStand here={here} since={since} />}
      {offered.length === 0 ? null : <h2 className="yes-offered">{t('decision.offered')}</h2>}
      {offered.map((job) => row(job))}
      {kept.length === 0 ? null : (
        <p className="small ink-2 yes-kept">
          {t('decision.keptOnCar', { n: kept.length, letters: listWords(kept.map((job) => job.letter)) })}
        </p>
      )}
    </div>
  );
}

/** What is compared with what, and whose car it is. */
function Head({ order, quotes, since }: { order: Order; quotes: readonly Quote[]; since: Quote | null }) {
  const writing = useWriting();
  const now = useNow(60_000);
  const newest = quotes.at(-1);
  const asQuoted = newest !== undefined && newest.gross === order.yes.onSheet;
  const mileage = order.mileageIn ?? order.lastMileage;
  return (
    <>
      <header className="sheet-top">
        <div>
          <h2 className="shop-name">{t('decision.jobs')}</h2>
          <p className="small ink-2">
            {asQuoted
              ? t('decision.versionOf', { version: newest.version, day: dayText(newest.issuedAt, writing, now) })
              : t('decision.asItStands')}
            {since !== null && since !== (asQuoted ? newest : null)
              ? t('decision.against', { version: since.version })
              : order.decisions.some((one) => one.ceiling !== null)
                ? ''
                : t('decision.noYesSoFar')}
          </p>
        </div>
        <h1 className="order-number">
          <span>{t('sheet.order')}</span> {order.number}
        </h1>
      </header>
      <div className="car-line yes-car">
        <span className="plate big">{order.car.plate || t('sheet.noPlate')}</span>
        <p>
          <b>
            {order.car.words}
            {order.car.year === null ? '' : `, ${order.car.year}`}
          </b>
          <br />
          <span className="small">{order.customer.name}</span>
        </p>
        <p className="figure">
          <b>{mileage === null ? '' : `${wholeText(mileage, writing)}\u00a0${order.car.unit}`}</b>
          <br />
          <span className="small">
            {order.arrivedAt === null
              ? t('sheet.notHere')
              : t('sheet.in', { when: weekdayText(order.arrivedAt, writing) })}
          </span>
        </p>
      </div>
    </>
  );
}
