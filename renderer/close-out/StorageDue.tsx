import { StorageCharge } from '../places/contact/StorageCharge.tsx';
import type { Order } from '../sheet/order.ts';
import { useAsk } from '../state/use-ask.ts';
import { t } from '../words/t.ts';

/** Beside a sheet that is closed out: storage that came to be and does not stand on it yet. */
export function StorageDue({ order }: { readonly order: Order }) {
  const storage = useAsk('storage.get', order.counterSale ? null : { orderId: order.id }).data;
  if (storage === undefined || storage.days === 0) return null;
  if (storage.chargedUntil !== null && storage.chargedUntil >= storage.until) return null;
  return (
    <section aria-label={t('contact.storage')}>
      <h3>{t('contact.storage')}</h3>
      <StorageCharge orderId={order.id} storage={storage} />
      <p className="small ink-2">{t('contact.storageRule')}</p>
    </section>
  );
}
