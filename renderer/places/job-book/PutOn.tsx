import { useState } from 'react';
import { goTo } from '../../frame/router.ts';
import { Button } from '../../parts/Button.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { useAsk } from '../../state/use-ask.ts';
import { useDo } from '../../state/use-do.ts';
import { t } from '../../words/t.ts';
import { Pick } from '../book-in/Talk.tsx';

/** The job goes onto the sheet of an open order, which is opened then. */
export function PutOn({ bookJobId, onClose }: { readonly bookJobId: string; readonly onClose: () => void }) {
  const orders = useAsk('order.list', { which: 'open', most: 200 }).data?.rows;
  const put = useDo('job.fromBook');
  const [chosen, setChosen] = useState('');
  const orderId = chosen === '' ? (orders?.[0]?.id ?? '') : chosen;
  if (orders === undefined) return null;
  if (orders.length === 0) return <p>{t('jobBook.putOnNone')}</p>;
  const go = async () => {
    const answer = await put.run({ orderId, bookJobId });
    if (answer.ok) goTo('orders', orderId);
  };
  return (
    <form
      className="book-put"
      onSubmit={(event) => {
        event.preventDefault();
        void go();
      }}
    >
      <Pick
        label={t('jobBook.putOnWhich')}
        value={orderId}
        options={orders.map((row) => ({
          value: row.id,
          words: [row.number, row.plate, row.car, row.customer].filter((text) => text !== '').join(', '),
        }))}
        onChange={setChosen}
      />
      <Button type="submit" disabled={put.busy}>
        {t('jobBook.putOnGo')}
      </Button>
      <Button onClick={onClose}>{t('frame.close')}</Button>
      <NotSaved error={put.error} />
    </form>
  );
}
