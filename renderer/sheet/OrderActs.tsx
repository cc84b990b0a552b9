import { useState } from 'react';
import { hrefOf } from '../frame/router.ts';
import { HandOver } from '../papers/HandOver.tsx';
import { Field } from '../parts/Field.tsx';
import { SmallForm } from '../parts/SmallForm.tsx';
import { DropOffSlip } from '../places/book-in/DropOffSlip.tsx';
import { MoveBooking } from '../places/orders/MoveBooking.tsx';
import { useDo } from '../state/use-do.ts';
import { t } from '../words/t.ts';
import { Arrive } from './Arrive.tsx';
import type { Order } from './order.ts';
import { Wrong } from './Wrong.tsx';

/** The car comes, the car goes; or the customer calls it off. */
export function OrderActs({ order }: { readonly order: Order }) {
  const cancel = useDo('order.cancel');
  const [goes, setGoes] = useState(false);
  const [why, setWhy] = useState<string | null>(null);
  const { id, revision } = order;
  return (
    <section aria-label={t('sheet.comesGoes')}>
      <h3>{t('sheet.comesGoes')}</h3>
      <MoveBooking order={order} />
      <DropOffSlip orderId={id} />
      {order.arrivedAt === null && order.cancelledAt === null ? (
        <>
          <Arrive order={order} />
          <p>
            <a className="link" href={hrefOf('today', 'take-in', id)}>
              {t('intake.takeInOpen')}
            </a>
          </p>
        </>
      ) : null}
      {order.handedOverAt !== null || goes ? (
        <HandOver order={order} />
      ) : order.arrivedAt === null ? null : (
        <p>
          <button type="button" className="link" onClick={() => setGoes(true)}>
            {t('papers.goesOpen')}
          </button>
        </p>
      )}
      {order.cancelledAt !== null ? <p>{t('sheet.cancelled', { why: order.cancelWhy })}</p> : null}
      {order.cancelledAt !== null || order.handedOverAt !== null ? null : why === null ? (
        <button type="button" className="link" onClick={() => setWhy('')}>
          {t('sheet.cancelOpen')}
        </button>
      ) : (
        <SmallForm big verb={t('sheet.cancel')} onSend={() => cancel.run({ id, revision, why })} busy={cancel.busy}>
          <Field label={t('sheet.cancelWhy')} value={why} onChange={setWhy} autoFocus />
        </SmallForm>
      )}
      <Wrong error={cancel.error} />
    </section>
  );
}
