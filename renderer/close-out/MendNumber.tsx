import { useState } from 'react';
import { Field } from '../parts/Field.tsx';
import { SmallForm } from '../parts/SmallForm.tsx';
import type { Order } from '../sheet/order.ts';
import { Wrong } from '../sheet/Wrong.tsx';
import { onRevision } from '../state/on-revision.ts';
import { useDo } from '../state/use-do.ts';
import { t } from '../words/t.ts';

/** The purchase order number that the account wants. */
export function MendNumber({ order }: { readonly order: Order }) {
  const change = useDo('order.change');
  const [text, setText] = useState(order.poNumber);
  return (
    <SmallForm
      verb={t('closeOut.write')}
      onSend={() =>
        onRevision(
          order.revision,
          (revision) => change.run({ id: order.id, revision, change: { poNumber: text } }),
          (row) => row.poNumber === order.poNumber,
        )
      }
      busy={change.busy}
      wrong={<Wrong error={change.error} />}
    >
      <Field label={t('closeOut.poNumber')} value={text} onChange={setText} maxLength={60} />
    </SmallForm>
  );
}
