import type { ReactNode } from 'react';
import { heldWords } from '../../bench/held-words.ts';
import { TapsWaiting } from '../../bench/TapsWaiting.tsx';
import { goTo } from '../../frame/router.ts';
import { Button } from '../../parts/Button.tsx';
import { Caution } from '../../parts/Caution.tsx';
import { FootBar } from '../../parts/FootBar.tsx';
import { Loading } from '../../parts/Loading.tsx';
import type { Job, Order } from '../../sheet/order.ts';
import { Wrong } from '../../sheet/Wrong.tsx';
import { useAsk } from '../../state/use-ask.ts';
import { t } from '../../words/t.ts';
import { BayClocks } from './BayClocks.tsx';
import { BaySteps } from './BaySteps.tsx';
import { BayTop } from './BayTop.tsx';
import { FoundPage } from './found/FoundPage.tsx';
import { LastTimesHere } from './LastTimesHere.tsx';
import { CheckPage } from './leave/CheckPage.tsx';
import { LeavePage } from './leave/LeavePage.tsx';
import { PhotoPage } from './PhotoPage.tsx';
import { UsedPart } from './UsedPart.tsx';
import '../../bench/bench.css';
import './bay.css';
import './found/found.css';

interface Props {
  readonly id: string;
  /** Of the job in hand; '' for the first that may be worked on. */
  readonly letter: string;
  /** What is said beside the steps: '', 'found', 'part', 'photo', 'leave', 'list'. */
  readonly side: string;
  /** The step or the list that it is about; '' for none. */
  readonly about: string;
}

/** The bench beside the lift: clocks on top, the step in hand in the middle, what a mechanic needs to say at the foot. */
export default function BayPage({ id, letter, side, about }: Props) {
  const asked = useAsk('order.get', { id });
  const order = asked.data;
  if (order === undefined)
    return asked.error === null ? asked.loading ? <Loading rows={10} /> : null : <Wrong error={asked.error} />;
  const job = order.jobs.find((one) => one.letter === letter) ?? order.jobs.find((one) => one.covered) ?? order.jobs[0];
  return (
    <div className="bay">
      <Side {...{ order, job, side, about }} />
    </div>
  );
}

interface SideProps {
  readonly order: Order;
  readonly job: Job | undefined;
  readonly side: string;
  readonly about: string;
}

function Side({ order, job, side, about }: SideProps) {
  const step = /^\d+$/.test(about) ? Number(about) : null;
  const back = () => goTo('orders', order.id, bayOf(job));
  const leave = () => goTo('orders', order.id, bayOf(job), 'leave');
  const beside = { order, job, step, onBack: back };
  if (side === 'found') return <FoundPage {...beside} />;
  if (side === 'part' && job !== undefined) return <UsedPart {...beside} job={job} />;
  if (side === 'photo') return <PhotoPage {...beside} />;
  if (side === 'leave')
    return (
      <LeavePage {...beside} onList={(checkListId) => goTo('orders', order.id, bayOf(job), 'list', checkListId)} />
    );
  if (side === 'list') return <CheckPage order={order} checkListId={about} onBack={leave} />;
  return <JobInHand order={order} job={job} />;
}

/** The address of a job's bench. */
export function bayOf(job: Job | undefined): string {
  return job === undefined ? 'bay' : `bay-${job.letter}`;
}

function JobInHand({ order, job }: { readonly order: Order; readonly job: Job | undefined }) {
  const version = useAsk('jobBook.version', job?.bookVersionId == null ? null : { versionId: job.bookVersionId }).data;
  const to = (...path: string[]) => goTo('orders', order.id, bayOf(job), ...path);
  const held = job === undefined ? null : heldWords(order, job);
  return (
    <>
      <BayTop
        order={order}
        title={job?.title ?? t('bench.noJob')}
        action={<Button onClick={() => goTo('orders', order.id)}>{t('bay.sheet')}</Button>}
      />
      {order.jobs.length < 2 ? null : <Jobs order={order} job={job} />}
      {job === undefined ? null : <BayClocks order={order} job={job} held={held} />}
      <TapsWaiting />
      <div className="bay-mid">
        {version === undefined || version.content.cautions.length === 0 ? null : (
          <Caution>{version.content.cautions.join(' ')}</Caution>
        )}
        {held === null ? null : (
          <p className="bay-held">
            <b>{t('parts.held')}</b> {held}
          </p>
        )}
        {job === undefined ? null : version === undefined || version.content.steps.length === 0 ? (
          <p className="bay-held">{t('bay.nothingToDo')}</p>
        ) : (
          <BaySteps {...{ order, job, held }} procedure={version.content} onPhoto={(n) => to('photo', String(n))} />
        )}
        {version === undefined ? null : <LastTimesHere bookJobId={version.bookJobId} />}
      </div>
      <Acts>
        <Button onClick={() => to('found')}>{t('bay.found')}</Button>
        <Button onClick={() => to('part')}>{t('bay.usedPart')}</Button>
        <Button onClick={() => to('photo')}>{t('bay.photo')}</Button>
        <Button onClick={() => to('leave')}>{t('release.title')}</Button>
      </Acts>
      <FootBar yes={order.yes} />
    </>
  );
}

function Acts({ children }: { readonly children: ReactNode }) {
  return <div className="bay-acts">{children}</div>;
}

function Jobs({ order, job }: { readonly order: Order; readonly job: Job | undefined }) {
  return (
    <nav className="bay-jobs" aria-label={t('bay.jobs')}>
      {order.jobs.map((one) => (
        <button
          key={one.id}
          type="button"
          className="chip"
          aria-current={one.id === job?.id || undefined}
          onClick={() => goTo('orders', order.id, bayOf(one))}
        >
          <b>{one.letter}</b> {one.title}
        </button>
      ))}
    </nav>
  );
}
