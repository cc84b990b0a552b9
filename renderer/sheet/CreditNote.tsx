import { useState } from 'react';
import { Button } from '../parts/Button.tsx';
import { Field } from '../parts/Field.tsx';
import { Tick } from '../parts/Tick.tsx';
import { useWriting } from '../state/shop.ts';
import { useDo } from '../state/use-do.ts';
import { amountText } from '../words/figures.ts';
import { t } from '../words/t.ts';
import { invoiceOf, type Order } from './order.ts';
import { Wrong } from './Wrong.tsx';

/** Corrects an invoice: whole lines of it are credited, with a reason that is printed. */
export function CreditNote({ order }: { readonly order: Order }) {
  const writing = useWriting();
  const credit = useDo('creditNote.issue');
  const [open, setOpen] = useState(false);
  const [named, setNamed] = useState<readonly string[]>([]);
  const [reason, setReason] = useState('');
  const invoice = invoiceOf(order);
  if (invoice === undefined) return null;
  const lines = order.jobs.flatMap((job) => job.lines.map((line) => ({ letter: job.letter, line })));
  const go = async () => {
    const answer = await credit.run({
      invoicePaperId: invoice.id,
      reason,
      lines: lines
        .filter(({ line }) => named.includes(line.id))
        .map(({ line }) => ({ lineId: line.id, quantity: line.charged })),
    });
    if (!answer.ok) return;
    setOpen(false);
    setNamed([]);
    setReason('');
  };
  if (!open)
    return (
      <section>
        <button type="button" className="link" onClick={() => setOpen(true)}>
          {t('sheet.creditOpen')}
        </button>
      </section>
    );
  return (
    <section aria-label={t('sheet.credit')}>
      <h3>{t('sheet.credit')}</h3>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void go();
        }}
      >
        {lines.map(({ letter, line }) => (
          <Tick
            key={line.id}
            ticked={named.includes(line.id)}
            onTick={(ticked) => setNamed(ticked ? [...named, line.id] : named.filter((id) => id !== line.id))}
          >
            {letter} {line.words}, {amountText(line.amount, writing)}
          </Tick>
        ))}
        <Field label={t('sheet.creditReason')} value={reason} onChange={setReason} />
        <Button type="submit" disabled={credit.busy} held={named.length === 0 ? t('sheet.creditNone') : null}>
          {t('sheet.creditMake')}
        </Button>
        <Wrong error={credit.error} />
      </form>
    </section>
  );
}
