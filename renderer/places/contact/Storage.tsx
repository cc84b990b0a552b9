import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { amountText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { civilText } from '../../words/times.ts';

/** What leaving the car here costs so far; nothing where it was not told at the door. */
export function Storage({ orderId }: { readonly orderId: string }) {
  const writing = useWriting();
  const { data } = useAsk('storage.get', { orderId });
  if (data === undefined || !data.told) return null;
  const { perDay, freeWorkingDays, notice, firstCharged, until, days, gross } = data;
  const day = (on: string | null) => (on === null ? '' : civilText(on, writing));
  return (
    <section aria-label={t('contact.storage')}>
      <h3>{t('contact.storage')}</h3>
      <div className="contact-storage">
        <p>{t('contact.storageTold', { perDay: amountText(perDay, writing), n: freeWorkingDays })}</p>
        {notice === null ? <p>{t('contact.storageNoNotice')}</p> : null}
        {notice !== null && days === 0 ? (
          <p>{t('contact.storageFree', { notice: day(notice), from: day(firstCharged) })}</p>
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
        <p className="small ink-2">{t('contact.storageRule')}</p>
      </div>
    </section>
  );
}
