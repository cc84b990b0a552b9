import { useState } from 'react';
import { Field } from '../parts/Field.tsx';
import { SmallForm } from '../parts/SmallForm.tsx';
import type { Order } from '../sheet/order.ts';
import { Wrong } from '../sheet/Wrong.tsx';
import { useNow } from '../state/now.ts';
import { onRevision } from '../state/on-revision.ts';
import { useWriting } from '../state/shop.ts';
import { useDo } from '../state/use-do.ts';
import { amountText } from '../words/figures.ts';
import { t } from '../words/t.ts';
import { nearText } from '../words/times.ts';

/** The form that the main action of the foot sends. */
export const HAND_FORM = 'hand-over';

/** The car goes: to whom, and where something is still open, who drives away with it unpaid. */
export function HandOver({ order, onDone }: { readonly order: Order; readonly onDone?: () => void }) {
  const writing = useWriting();
  const now = useNow(60_000);
  const hand = useDo('order.handOver');
  const open = Math.max(0, order.balance ?? 0);
  const [typed, setTyped] = useState<string | null>(null);
  const [nobody, setNobody] = useState(false);
  const sum = amountText(open, writing);
  if (order.handedOverAt !== null)
    return (
      <section aria-label={t('papers.handOver')}>
        <h3>{t('papers.handOver')}</h3>
        <p>
          {t('papers.handedAt', { when: nearText(order.handedOverAt, writing, now), to: order.handedOverTo })}{' '}
          {open > 0 ? <b>{t('papers.goneUnpaid', { sum })}</b> : t('papers.gonePaid')}
        </p>
      </section>
    );
  // Who drives away unpaid is typed, never guessed.
  const to = typed ?? (open > 0 ? '' : order.customer.name);
  const go = async () => {
    setNobody(to.trim() === '');
    if (to.trim() === '' || hand.busy) return;
    const answer = await onRevision(
      order.revision,
      (revision) => hand.run({ id: order.id, revision, to }),
      (row) => row.to === '' || row.to === null,
    );
    if (answer.ok) onDone?.();
  };
  return (
    <section aria-label={t('papers.handOver')}>
      <h3>{t('papers.handOver')}</h3>
      {open > 0 ? <p className="small">{t('papers.unpaidLeaves', { sum })}</p> : null}
      <SmallForm verb={t('papers.handIt')} onSend={go} busy={hand.busy} id={HAND_FORM} big>
        <Field
          label={t(open > 0 ? 'papers.handedUnpaid' : 'papers.handedTo')}
          value={to}
          onChange={setTyped}
          error={nobody && to.trim() === '' ? t('papers.whoTook') : null}
          maxLength={120}
        />
      </SmallForm>
      <Wrong error={hand.error} />
    </section>
  );
}
