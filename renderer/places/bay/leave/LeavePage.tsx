import { TapsWaiting } from '../../../bench/TapsWaiting.tsx';
import { Button } from '../../../parts/Button.tsx';
import { Loading } from '../../../parts/Loading.tsx';
import type { Job, Order } from '../../../sheet/order.ts';
import { Wrong } from '../../../sheet/Wrong.tsx';
import { useAsk } from '../../../state/use-ask.ts';
import { t } from '../../../words/t.ts';
import { BayTop } from '../BayTop.tsx';
import { ClockStrip } from '../ClockStrip.tsx';
import { Drives } from './Drives.tsx';
import { KeptHere } from './KeptHere.tsx';
import { Lists } from './Lists.tsx';

interface Props {
  readonly order: Order;
  readonly job: Job | undefined;
  readonly onBack: () => void;
  readonly onList: (checkListId: string) => void;
}

/** What stands between a car and the road: what must not be used, who drove it, what was gone through. */
export function LeavePage({ order, job, onBack, onList }: Props) {
  const asked = useAsk('release.get', { orderId: order.id });
  const release = asked.data;
  return (
    <>
      <BayTop order={order} title={t('release.title')} action={<Button onClick={onBack}>{t('bay.back')}</Button>} />
      <ClockStrip order={order} />
      <TapsWaiting />
      <div className="bay-mid found">
        <Wrong error={asked.error} />
        {release === undefined ? (
          asked.loading ? (
            <Loading rows={6} />
          ) : null
        ) : (
          <>
            <KeptHere order={order} rows={release.quarantines} />
            <Lists order={order} wanted={release.finalChecks} onList={onList} />
            <Drives order={order} job={job} drives={release.drives} doers={release.doers} />
          </>
        )}
      </div>
    </>
  );
}
