import { useState } from 'react';
import { Button } from '../parts/Button.tsx';
import { Field } from '../parts/Field.tsx';
import { useDo } from '../state/use-do.ts';
import { t } from '../words/t.ts';
import { invoiceOf, type Order } from './order.ts';
import { Wrong } from './Wrong.tsx';

/** The car comes, the car goes; or the customer calls it off. */
export function OrderActs({ order }: { readonly order: Order }) {
  const arrive = useDo('order.arrive');
  const handOver = useDo('order.handOver');
  const cancel = useDo('order.cancel');
  const [mileage, setMileage] = useState('');
  const [to, setTo] = useState(order.customer.name);
  const [why, setWhy] = useState<string | null>(null);
  const figure = /^\d{1,7}$/.test(mileage) ? Number(mileage) : null;
  const { id, revision } = order;
  return (
    <section aria-label={t('sheet.comesGoes')}>
      <h3>{t('sheet.comesGoes')}</h3>
      {order.arrivedAt === null && order.cancelledAt === null ? (
        <form
          className="row-form"
          onSubmit={(event) => {
            event.preventDefault();
            void arrive.run({ id, revision, mileage: figure });
          }}
        >
          <Field label={t('sheet.mileageIn')} value={mileage} onChange={setMileage} inputMode="numeric" figure />
          <Button type="submit">{t('sheet.arrive')}</Button>
        </form>
      ) : null}
      {order.arrivedAt !== null && order.handedOverAt === null ? (
        <form
          className="row-form"
          onSubmit={(event) => {
            event.preventDefault();
            void handOver.run({ id, revision, to });
          }}
        >
          <Field label={t('sheet.handTo')} value={to} onChange={setTo} />
          <Button type="submit">{t('sheet.handOver')}</Button>
        </form>
      ) : null}
      {order.handedOverAt !== null ? <p>{t('sheet.gone')}</p> : null}
      {order.cancelledAt !== null ? <p>{t('sheet.cancelled', { why: order.cancelWhy })}</p> : null}
      {order.cancelledAt !== null || order.handedOverAt !== null || invoiceOf(order) !== undefined ? null : why ===
        null ? (
        <button type="button" className="link" onClick={() => setWhy('')}>
          {t('sheet.cancelOpen')}
        </button>
      ) : (
        <form
          className="row-form"
          onSubmit={(event) => {
            event.preventDefault();
            void cancel.run({ id, revision, why });
          }}
        >
          <Field label={t('sheet.cancelWhy')} value={why} onChange={setWhy} autoFocus />
          <Button type="submit">{t('sheet.cancel')}</Button>
        </form>
      )}
      <Wrong error={arrive.error ?? handOver.error ?? cancel.error} />
    </section>
  );
}
