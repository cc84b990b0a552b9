import { useState } from 'react';
import { hrefOf } from '../../frame/router.ts';
import { Field } from '../../parts/Field.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { SmallForm } from '../../parts/SmallForm.tsx';
import type { Order } from '../../sheet/order.ts';
import { useShop, useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { useDo } from '../../state/use-do.ts';
import { amountText, readAmount } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { civilText } from '../../words/times.ts';
import { StorageCharge } from './StorageCharge.tsx';

/** What leaving the car here costs so far; where it was not told, that nothing is charged, and the way to write it down. */
export function Storage({ order }: { readonly order: Order }) {
  const writing = useWriting();
  const { data } = useAsk('storage.get', { orderId: order.id });
  if (data === undefined) return null;
  const { told, perDay, freeWorkingDays, notice, firstCharged, until, days, gross, invoicedUntil, visit } = data;
  if (!told && order.handedOverAt !== null) return null;
  const day = (on: string | null) => (on === null ? '' : civilText(on, writing));
  return (
    <section aria-label={t('contact.storage')}>
      <h3>{t('contact.storage')}</h3>
      {told ? (
        <div className="contact-storage">
          <p>{t('contact.storageTold', { perDay: amountText(perDay, writing), n: freeWorkingDays })}</p>
          {notice === null ? <p>{t('contact.storageNoNotice')}</p> : null}
          {visit === null ? null : (
            <p>
              {t('contact.storageOf')}{' '}
              <a href={hrefOf('orders', visit.id)}>{t('customers.order', { number: visit.number })}</a>
            </p>
          )}
          {notice !== null && days === 0 && invoicedUntil === null ? (
            <p>
              {firstCharged === null
                ? t('contact.storageNone', { notice: day(notice) })
                : t('contact.storageFree', { notice: day(notice), from: day(firstCharged) })}
            </p>
          ) : null}
          {days > 0 ? (
            <p className="semi">
              {t('contact.storageSoFar', {
                sum: amountText(gross, writing),
                days: t('contact.storageDays', { n: days }),
                from: day(firstCharged),
                until: day(until),
              })}
            </p>
          ) : null}
          <StorageCharge orderId={order.id} storage={data} />
        </div>
      ) : (
        <Told order={order} />
      )}
      <p className="small ink-2">{t('contact.storageRule')}</p>
    </section>
  );
}

const FREE_MOST = 60;

/** What the customer was told in writing that it costs: a calendar day, after so many free working days. */
function Told({ order }: { readonly order: Order }) {
  const writing = useWriting();
  const change = useDo('order.change');
  const [open, setOpen] = useState(false);
  const usual = useShop()?.settings?.storage ?? null;
  const [price, setPrice] = useState(amountText(usual?.perDay ?? null, writing));
  const [free, setFree] = useState(String(usual?.freeWorkingDays ?? 3));
  const [tried, setTried] = useState(false);
  const perDay = readAmount(price, writing);
  const freeWorkingDays = /^\d{1,2}$/.test(free.trim()) && Number(free) <= FREE_MOST ? Number(free) : null;
  const go = async () => {
    setTried(true);
    if (perDay === null || perDay <= 0 || freeWorkingDays === null) return;
    const door = { ...order.door, storageTold: true, storage: { perDay, freeWorkingDays } };
    await change.run({ id: order.id, revision: order.revision, change: { door } });
  };
  if (!open)
    return (
      <p className="small">
        {t('contact.storageUntold')}{' '}
        <button type="button" className="link" onClick={() => setOpen(true)}>
          {t('contact.storageTell')}
        </button>
      </p>
    );
  return (
    <SmallForm verb={t('contact.keep')} onSend={go} busy={change.busy} wrong={<NotSaved error={change.error} />}>
      <Field
        label={t('contact.storagePrice')}
        value={price}
        onChange={setPrice}
        inputMode="decimal"
        autoFocus
        error={tried && (perDay === null || perDay <= 0) ? t('contact.storagePriceWrong') : null}
      />
      <Field
        label={t('contact.storageFreeDays')}
        value={free}
        onChange={setFree}
        inputMode="numeric"
        error={tried && freeWorkingDays === null ? t('shop.wholeWrong', { least: 0, most: FREE_MOST }) : null}
      />
    </SmallForm>
  );
}
