import type { Order } from '../../sheet/order.ts';
import { useNow } from '../../state/now.ts';
import { useSession } from '../../state/session.ts';
import { useTaps } from '../../state/taps.ts';
import { spanText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { runsSince } from './BayClocks.tsx';

/** One's own clock while something is said: it runs on. */
export function ClockStrip({ order }: { readonly order: Order }) {
  const now = useNow();
  const taps = useTaps((state) => state.taps);
  const me = useSession((session) => session.person);
  const job = order.jobs.find((one) => runsSince(order, one, me?.personId ?? '', taps) !== null);
  const since = job === undefined ? null : runsSince(order, job, me?.personId ?? '', taps);
  return (
    <p className={since === null ? 'clock-strip' : 'clock-strip runs'}>
      <span>
        <b>{me?.name}</b>, {job === undefined ? t('bay.noClock') : t('bay.clockRuns', { letter: job.letter })}
      </span>
      {since === null ? null : <b>{spanText(now - since)}</b>}
    </p>
  );
}
