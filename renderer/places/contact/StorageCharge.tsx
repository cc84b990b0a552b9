import type { OutputOf } from '../../../core/contract/index.ts';
import { Button } from '../../parts/Button.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { useWriting } from '../../state/shop.ts';
import { useDo } from '../../state/use-do.ts';
import { amountText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';

interface Props {
  readonly orderId: string;
  readonly storage: OutputOf<'storage.get'>;
  readonly invoiced: boolean;
}

/** The storage that came to be, put on the sheet in one step with its reckoning; nothing where no day is charged yet. */
export function StorageCharge({ orderId, storage, invoiced }: Props) {
  const writing = useWriting();
  const charge = useDo('storage.charge');
  const { days, freeWorkingDays, perDay, gross, chargedUntil, until } = storage;
  if (days === 0 || (chargedUntil !== null && chargedUntil >= until)) return null;
  const reckoned = t(freeWorkingDays === 0 ? 'contact.storageReckonedBare' : 'contact.storageReckoned', {
    ...{ n: days, free: freeWorkingDays, perDay: amountText(perDay, writing) },
  });
  return (
    <div className="storage-charge">
      <Button
        small
        disabled={charge.busy}
        held={invoiced ? t('contact.storageInvoiced') : null}
        onClick={() => void charge.run({ orderId, until })}
      >
        {t(chargedUntil === null ? 'contact.storageCharge' : 'contact.storageUpTo', {
          sum: amountText(gross, writing),
        })}
      </Button>
      <span className="small">{reckoned}</span>
      <NotSaved error={charge.error} />
    </div>
  );
}
