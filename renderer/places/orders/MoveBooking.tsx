import { useEffect, useRef, useState } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { formatQuantity } from '../../../core/measure/quantity.ts';
import { timeShown } from '../../../core/time/time-shown.ts';
import { Button } from '../../parts/Button.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { useShop, useWriting } from '../../state/shop.ts';
import { useDo } from '../../state/use-do.ts';
import { quantityText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { civilText } from '../../words/times.ts';
import { type BayDraft, BayTime } from '../book-in/BayTime.tsx';
import { readHours } from '../book-in/draft.ts';
import { DidNotCome } from './DidNotCome.tsx';
import './move-booking.css';

type Order = OutputOf<'order.get'>;

/** Where the car stands in the plan: its bay, day and hours, and the form that moves it. */
export function MoveBooking({ order }: { readonly order: Order }) {
  const writing = useWriting();
  const bays = useShop()?.bays ?? [];
  const move = useDo('booking.change');
  const [value, setValue] = useState<BayDraft | null>(null);
  const [tried, setTried] = useState(false);
  const { booking, id, revision } = order;
  const form = useRef<HTMLFormElement>(null);
  const isOpen = value !== null;
  // Its button comes into sight with it, also once the days stand in it.
  useEffect(() => {
    const node = form.current;
    if (!isOpen || node === null) return;
    const watcher = new ResizeObserver(() => node.scrollIntoView({ block: 'nearest' }));
    watcher.observe(node);
    return () => watcher.disconnect();
  }, [isOpen]);
  if (order.handedOverAt !== null || order.cancelledAt !== null) return null;

  const open = () =>
    setValue({
      bayId: bays.find((bay) => bay.name === booking?.bay)?.id ?? '',
      day: booking?.day ?? '',
      from: booking?.from ?? '',
      hours: booking === null ? '1' : formatQuantity(booking.hours, writing.decimal),
      personId: booking?.personId ?? '',
    });
  const hours = value === null ? null : readHours(value.hours);
  const whole = value !== null && value.bayId !== '' && value.day !== '' && value.from !== '' && hours !== null;
  const go = async () => {
    setTried(true);
    if (!whole) return;
    const { bayId, day, from } = value;
    const personId = value.personId || null;
    const answer = await move.run({ orderId: id, revision, booking: { bayId, day, from, hours, personId } });
    if (!answer.ok) return;
    setValue(null);
    setTried(false);
  };
  return (
    <div className="move-booking">
      <p>
        {booking === null
          ? t('orders.noBooking')
          : t('orders.booking', {
              bay: booking.bay,
              day: civilText(booking.day, writing),
              from: timeShown(booking.from),
              hours: quantityText(booking.hours, 'h', writing),
            })}{' '}
        <button
          type="button"
          className="link"
          aria-expanded={value !== null}
          onClick={() => (value === null ? open() : setValue(null))}
        >
          {t(booking === null ? 'orders.giveBay' : 'orders.moveBay')}
        </button>
      </p>
      {value === null ? null : (
        <form
          ref={form}
          className="move-booking-form"
          onSubmit={(event) => {
            event.preventDefault();
            void go();
          }}
        >
          <BayTime
            value={value}
            onChange={(part) => setValue({ ...value, ...part })}
            error={tried && !whole ? t('intake.bookingWrong') : null}
            orderId={id}
          />
          {tried && value.bayId === '' ? (
            <p className="wrong-words" role="alert">
              {t('intake.bookingWrong')}
            </p>
          ) : null}
          <div>
            <Button type="submit" disabled={move.busy}>
              {t('orders.bookBay')}
            </Button>
          </div>
        </form>
      )}
      <NotSaved error={move.error} />
      <DidNotCome order={order} />
    </div>
  );
}
