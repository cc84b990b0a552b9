import { useRef, useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { useWriting } from '../../state/shop.ts';
import type { CallError } from '../../state/transport.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { t } from '../../words/t.ts';
import type { OrderFilter, Week } from './OrderWeek.tsx';
import { saveOrders } from './save-orders.ts';

interface Props {
  readonly filter: OrderFilter;
  readonly weeks: readonly Week[];
  readonly total: number;
}

/** What the sentence shows as a CSV file; where it is much it counts, and can be stopped. */
export function SaveOrders({ filter, weeks, total }: Props) {
  const writing = useWriting();
  const [done, setDone] = useState<number | null>(null);
  const [error, setError] = useState<CallError | null>(null);
  const stopping = useRef(false);
  const go = async () => {
    stopping.current = false;
    setDone(0);
    setError(await saveOrders(filter, weeks, writing, setDone, () => stopping.current));
    setDone(null);
  };
  if (total === 0) return null;
  return (
    <>
      <span role="status" className="ink-2">
        {error === null ? null : errorSentence(error, writing)}
        {done === null ? null : t('orders.saving', { done, total })}
      </span>
      {done === null ? (
        <Button onClick={() => void go()}>{t('orders.save')}</Button>
      ) : (
        <Button
          onClick={() => {
            stopping.current = true;
          }}
        >
          {t('orders.stop')}
        </Button>
      )}
    </>
  );
}
