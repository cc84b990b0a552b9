import { useState } from 'react';
import { Button } from '../parts/Button.tsx';
import { Choice } from '../parts/Choice.tsx';
import { Field } from '../parts/Field.tsx';
import { useNow } from '../state/now.ts';
import { useWriting } from '../state/shop.ts';
import { useDo } from '../state/use-do.ts';
import { t } from '../words/t.ts';
import { nearText } from '../words/times.ts';
import type { Order } from './order.ts';
import { Wrong } from './Wrong.tsx';

const WAYS = ['phone', 'message', 'person'] as const;

/** Tries that reached nobody, and one more. */
export function Tried({ order }: { readonly order: Order }) {
  const writing = useWriting();
  const now = useNow(60_000);
  const tried = useDo('decision.tried');
  const [open, setOpen] = useState(false);
  const [way, setWay] = useState<(typeof WAYS)[number]>('phone');
  const [reached, setReached] = useState(order.customer.phone);
  const [words, setWords] = useState('');
  const go = async () => {
    const answer = await tried.run({ orderId: order.id, way, reached, words });
    if (!answer.ok) return;
    setWords('');
    setOpen(false);
  };
  return (
    <section>
      <h3>{t('decision.tried')}</h3>
      <div>
        {order.tries.map((one) => (
          <p key={one.id}>
            {nearText(one.at, writing, now)} {[one.reached, one.words].filter((part) => part !== '').join(', ')}{' '}
            <span className="ink-2">{one.by}</span>
          </p>
        ))}
        {open ? (
          <>
            <Choice
              label={t('decision.how')}
              value={way}
              options={WAYS.map((value) => ({ value, words: t(`decision.way-${value}`) }))}
              onChange={setWay}
            />
            <Field label={t('decision.triedWhere')} value={reached} onChange={setReached} />
            <Field label={t('decision.triedWords')} value={words} onChange={setWords} />
            <Button small onClick={() => void go()} disabled={tried.busy}>
              {t('decision.triedAdd')}
            </Button>
          </>
        ) : (
          <button type="button" className="link" onClick={() => setOpen(true)}>
            {t('decision.triedOpen')}
          </button>
        )}
        <Wrong error={tried.error} />
      </div>
    </section>
  );
}
