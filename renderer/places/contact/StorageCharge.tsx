import type { OutputOf } from '../../../core/contract/index.ts';
import { hrefOf } from '../../frame/router.ts';
import { Button } from '../../parts/Button.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { useWriting } from '../../state/shop.ts';
import { useDo } from '../../state/use-do.ts';
import { amountText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { civilText } from '../../words/times.ts';

interface Props {
  readonly orderId: string;
  readonly storage: OutputOf<'storage.get'>;
}

/**
 * The storage that came to be, put on the sheet in one step with its reckoning, and where it stands; once the invoice is
 * out, on an order of its own. Nothing where no day is charged yet.
 */
export function StorageCharge({ orderId, storage }: Props) {
  const writing = useWriting();
  const charge = useDo('storage.charge');
  const { days, freeWorkingDays, perDay, gross, chargedUntil, invoicedUntil, standsOn, ownOrder, until } = storage;
  const due = days > 0 && (chargedUntil === null || chargedUntil < until);
  const free = invoicedUntil === null ? freeWorkingDays : 0;
  const reckoned = t(free === 0 ? 'contact.storageReckonedBare' : 'contact.storageReckoned', {
    ...{ n: days, free, perDay: amountText(perDay, writing) },
  });
  const words =
    standsOn !== null ? 'contact.storageUpTo' : ownOrder ? 'contact.storageOwnOrder' : 'contact.storageCharge';
  return (
    <>
      {due ? (
        <div className="storage-charge">
          <Button small disabled={charge.busy} onClick={() => void charge.run({ orderId, until })}>
            {t(words, { sum: amountText(gross, writing) })}
          </Button>
          <span className="small">{reckoned}</span>
          <NotSaved error={charge.error} />
        </div>
      ) : null}
      {invoicedUntil === null ? null : (
        <p>{t('contact.storageInvoiced', { until: civilText(invoicedUntil, writing) })}</p>
      )}
      {chargedUntil === null ? null : (
        <p>
          {t('contact.storageStands', { until: civilText(chargedUntil, writing) })}{' '}
          {standsOn === null || standsOn.id === orderId ? null : (
            <a href={hrefOf('orders', standsOn.id)}>{t('customers.order', { number: standsOn.number })}</a>
          )}
        </p>
      )}
    </>
  );
}
