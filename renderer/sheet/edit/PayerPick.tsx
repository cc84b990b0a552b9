import { useDeferredValue, useState } from 'react';
import type { CallAnswer } from '../../state/transport.ts';
import { useAsk } from '../../state/use-ask.ts';
import { t } from '../../words/t.ts';
import type { Order } from '../order.ts';
import { Wrong } from '../Wrong.tsx';

interface Props {
  readonly order: Order;
  readonly onPick: (payerId: string | null) => Promise<CallAnswer<unknown>>;
}

/** Who pays, where it is not the customer: found by name or number among the customers. */
export function PayerPick({ order, onPick }: Props) {
  const [typed, setTyped] = useState('');
  const [answer, setAnswer] = useState<CallAnswer<unknown> | null>(null);
  const text = useDeferredValue(typed.trim());
  const hits =
    useAsk('find.line', text.length > 1 ? { text, most: 6 } : null).data?.hits.filter(
      (hit) => hit.kind === 'customer' && hit.id !== order.customer.id,
    ) ?? [];
  const pick = async (payerId: string | null) => {
    const given = await onPick(payerId);
    setAnswer(given);
    if (given.ok) setTyped('');
  };
  return (
    <span className="named wide">
      <span aria-hidden="true">{t('edit.payer')}</span>
      <span className="payer">
        {order.payer === null ? (
          <span>{t('edit.payerCustomer', { name: order.customer.name })}</span>
        ) : (
          <>
            <b>{order.payer.name}</b>
            <button type="button" className="link small" onClick={() => void pick(null)}>
              {t('edit.payerBack')}
            </button>
          </>
        )}
        <input
          className="cell"
          aria-label={t('edit.payerFind')}
          placeholder={t('edit.payerFind')}
          value={typed}
          onChange={(event) => setTyped(event.target.value)}
        />
        {hits.map((hit) => (
          <button type="button" className="link" key={hit.id} onClick={() => void pick(hit.id)}>
            {hit.headline}
          </button>
        ))}
        {text.length > 1 && hits.length === 0 ? <span className="small ink-2">{t('edit.payerNone')}</span> : null}
      </span>
      <Wrong error={answer === null || answer.ok ? null : answer.error} />
    </span>
  );
}
