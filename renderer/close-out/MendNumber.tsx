import { useState } from 'react';
import { Button } from '../parts/Button.tsx';
import { Field } from '../parts/Field.tsx';
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
    <form
      className="row-form"
      onSubmit={(event) => {
        event.preventDefault();
        void onRevision(
          order.revision,
          (revision) => change.run({ id: order.id, revision, change: { poNumber: text } }),
          (row) => row.poNumber === order.poNumber,
        );
      }}
    >
      <Field label={t('closeOut.poNumber')} value={text} onChange={setText} maxLength={60} />
      <Button small type="submit" disabled={change.busy}>
        {t('closeOut.write')}
      </Button>
      <Wrong error={change.error} />
    </form>
  );
}
