import { useKey } from '../frame/keys.ts';
import { hrefOf } from '../frame/router.ts';
import type { Job, Order } from '../sheet/order.ts';
import { Wrong } from '../sheet/Wrong.tsx';
import { useSession } from '../state/session.ts';
import { useDo } from '../state/use-do.ts';
import { t } from '../words/t.ts';
import { Clocks } from './Clocks.tsx';
import { Pick } from './Pick.tsx';
import { PrintBenchCopy } from './PrintBenchCopy.tsx';
import { Steps } from './Steps.tsx';
import './bench.css';

interface Props {
  readonly order: Order;
  readonly job: Job | undefined;
  readonly onJob: (id: string) => void;
}

/** The bench of one job: its clocks, what it picks from stock, its steps. */
export function Bench({ order, job, onJob }: Props) {
  const me = useSession((session) => session.person?.personId);
  const on = useDo('clock.on');
  const off = useDo('clock.off');
  useKey(
    'Alt+S',
    () => {
      if (order.openClocks.some((clock) => clock.personId === me)) void off.run({});
      else if (job !== undefined) void on.run({ jobId: job.id });
    },
    job !== undefined,
  );
  return (
    <>
      <header className="bench-head">
        <h2>{t('bench.title')}</h2>
        <span>{job === undefined ? '' : t('bench.job', { letter: job.letter })}</span>
        {job === undefined ? null : (
          <a className="to-bay" href={hrefOf('orders', order.id, `bay-${job.letter}`)}>
            {t('bench.atTheLift')}
          </a>
        )}
      </header>
      {order.jobs.length < 2 ? null : (
        <p className="bench-jobs">
          {order.jobs.map((one) => (
            <button
              key={one.id}
              type="button"
              className="link"
              aria-current={one.id === job?.id || undefined}
              onClick={() => onJob(one.id)}
            >
              {one.letter}
              <span className="aloud"> {one.title}</span>
            </button>
          ))}
        </p>
      )}
      <Wrong error={on.error ?? off.error} />
      {job === undefined ? (
        <p>{t('bench.noJob')}</p>
      ) : (
        <>
          <Clocks order={order} job={job} />
          <Pick order={order} job={job} />
          {job.bookVersionId === null ? null : <PrintBenchCopy of={{ jobId: job.id }} small />}
          <Steps order={order} job={job} />
        </>
      )}
    </>
  );
}
