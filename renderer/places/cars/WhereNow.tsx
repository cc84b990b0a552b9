import type { OutputOf } from '../../../core/contract/index.ts';
import { timeShown } from '../../../core/time/time-shown.ts';
import { hrefOf } from '../../frame/router.ts';
import { useNow } from '../../state/now.ts';
import { useWriting } from '../../state/shop.ts';
import { t } from '../../words/t.ts';
import { civilText, nearText } from '../../words/times.ts';

interface Props {
  readonly visits: OutputOf<'car.get'>['visits'];
}

/** Whether the car is here, since when and where the plan has it, or when it is to come: one line an open order, with the way to it. */
export function WhereNow({ visits }: Props) {
  const writing = useWriting();
  const now = useNow(60_000);
  return visits.map(({ orderId, number, open }) => {
    if (open === null) return null;
    const { arrivedAt, booking } = open;
    return (
      <p key={orderId} className="car-now">
        <b>
          {arrivedAt === null ? t('cars.toCome') : t('cars.hereSince', { when: nearText(arrivedAt, writing, now) })}
        </b>{' '}
        {booking === null
          ? t('cars.nowhere')
          : t('cars.placed', {
              bay: booking.bay,
              day: civilText(booking.day, writing),
              from: timeShown(booking.from),
            })}{' '}
        <a className="link" href={hrefOf('orders', orderId)}>
          {t('cars.order', { number })}
        </a>
      </p>
    );
  });
}
