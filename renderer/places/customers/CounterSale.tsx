import { useState } from 'react';
import { goTo } from '../../frame/router.ts';
import { Button } from '../../parts/Button.tsx';
import { Field } from '../../parts/Field.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { useDo } from '../../state/use-do.ts';
import { t } from '../../words/t.ts';
import { CustomerPick } from './CustomerPick.tsx';

interface Who {
  readonly id: string;
  readonly name: string;
}

/** A sale over the counter: an order without a car, opened with what they want. */
export function CounterSale({ customer }: { readonly customer: Who | null }) {
  const book = useDo('order.book');
  const [who, setWho] = useState<Who | null>(customer);
  const [want, setWant] = useState('');
  const [tried, setTried] = useState(false);
  const go = async () => {
    setTried(true);
    if (who === null || want.trim() === '') return;
    const answer = await book.run({ customer: { id: who.id }, car: { none: true }, complaint: want, here: true });
    if (answer.ok) goTo('orders', answer.output.id);
  };
  return (
    <section className="customer-part" aria-label={t('customers.sale')}>
      <p className="small ink-2">{t('customers.saleWords')}</p>
      {who === null ? (
        <CustomerPick label={t('customers.saleWho')} not={null} onPick={setWho} />
      ) : (
        <form
          className="customer-sale"
          onSubmit={(event) => {
            event.preventDefault();
            void go();
          }}
        >
          <Field
            label={t('customers.saleWant', { name: who.name })}
            value={want}
            onChange={setWant}
            maxLength={4000}
            autoFocus
            error={tried && want.trim() === '' ? t('customers.saleWantNeeded') : null}
          />
          <Button type="submit" disabled={book.busy}>
            {t('customers.saleGo')}
          </Button>
          <NotSaved error={book.error} />
        </form>
      )}
    </section>
  );
}
