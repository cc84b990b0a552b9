import { useState } from 'react';
import { Field } from '../parts/Field.tsx';
import { SmallForm } from '../parts/SmallForm.tsx';
import type { Order } from '../sheet/order.ts';
import { Wrong } from '../sheet/Wrong.tsx';
import { onRevision } from '../state/on-revision.ts';
import { useWriting } from '../state/shop.ts';
import { useDo } from '../state/use-do.ts';
import { readAmount } from '../words/figures.ts';
import { t } from '../words/t.ts';

/** The bill of outside work: what it came to is written on its line, never seen by the customer. */
export function MendBill({ order, words }: { readonly order: Order; readonly words: string }) {
  const writing = useWriting();
  const change = useDo('line.change');
  const [text, setText] = useState('');
  const [unread, setUnread] = useState(false);
  const line = order.jobs
    .flatMap((job) => job.lines)
    .find((one) => one.kind === 'outside' && one.words === words && one.unitCost === null);
  if (line === undefined) return null;
  const go = async () => {
    const unitCost = readAmount(text, writing);
    const readable = unitCost !== null && unitCost >= 0;
    setUnread(!readable);
    if (readable)
      await onRevision(
        line.revision,
        (revision) => change.run({ id: line.id, revision, change: { unitCost } }),
        (row) => row.unitCost === null,
      );
  };
  return (
    <SmallForm verb={t('closeOut.billHere')} onSend={go} busy={change.busy} wrong={<Wrong error={change.error} />}>
      <Field
        label={t('closeOut.billCost', { words })}
        value={text}
        onChange={setText}
        inputMode="decimal"
        figure
        error={unread ? t('sheet.unread', { label: t('closeOut.billHere') }) : null}
      />
    </SmallForm>
  );
}
