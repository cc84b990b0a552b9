import type { OutputOf } from '../../../core/contract/index.ts';
import { civilDateOf } from '../../../core/time/instant.ts';
import { timeShown } from '../../../core/time/time-shown.ts';
import { NotSaved } from '../../parts/Notice.tsx';
import { useNow } from '../../state/now.ts';
import { useSession } from '../../state/session.ts';
import { useWriting } from '../../state/shop.ts';
import { useDo } from '../../state/use-do.ts';
import { t } from '../../words/t.ts';
import { civilText } from '../../words/times.ts';

interface Props {
  readonly order: Pick<
    OutputOf<'order.get'>,
    'id' | 'revision' | 'arrivedAt' | 'booking' | 'missed' | 'cancelledAt' | 'handedOverAt'
  >;
}

/** That they did not come on the day that they were booked for; or, once that was said, that they did after all. */
export function DidNotCome({ order }: Props) {
  const writing = useWriting();
  const today = civilDateOf(useNow(60_000), writing.zone);
  const say = useDo('booking.noShow');
  const desk = useSession((session) => session.person?.role !== 'mechanic');
  const { id, revision, booking, missed } = order;
  if (order.arrivedAt !== null || order.cancelledAt !== null || order.handedOverAt !== null) return null;
  const came = missed !== null;
  if (!came && (booking === null || booking.day > today)) return null;
  return (
    <>
      <p>
        {missed === null
          ? null
          : t('orders.missed', {
              bay: missed.bay,
              day: civilText(missed.day, writing),
              from: timeShown(missed.from),
            })}{' '}
        {desk ? (
          <button
            type="button"
            className="link"
            aria-disabled={say.busy}
            onClick={() => void say.run({ orderId: id, revision, came })}
          >
            {t(came ? 'plan.cameAfterAll' : 'plan.noShow')}
          </button>
        ) : null}
      </p>
      <NotSaved error={say.error} />
    </>
  );
}
