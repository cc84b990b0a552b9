import { useState } from 'react';
import { Field } from '../../parts/Field.tsx';
import { SmallForm } from '../../parts/SmallForm.tsx';
import { useNow } from '../../state/now.ts';
import { useWriting } from '../../state/shop.ts';
import { useDo } from '../../state/use-do.ts';
import { readAmount } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { civilText, nearText } from '../../words/times.ts';
import type { Line, Order } from '../order.ts';
import { Wrong } from '../Wrong.tsx';

/** A part or outside work that is ordered for this line: from whom, until when, and when it came with its bill. */
export function AwaitedPart({ order, line }: { readonly order: Order; readonly line: Line }) {
  const writing = useWriting();
  const now = useNow(60_000);
  const place = useDo('awaited.order');
  const arrive = useDo('awaited.arrive');
  const [supplier, setSupplier] = useState(line.supplier);
  const [reference, setReference] = useState('');
  const [dueOn, setDueOn] = useState('');
  const [bill, setBill] = useState('');
  const [open, setOpen] = useState(false);
  const [unread, setUnread] = useState(false);
  const all = order.awaited.filter((one) => one.lineId === line.id);
  const waiting = all.find((one) => one.arrivedAt === null);

  const send = async () => {
    const kind = line.kind === 'outside' ? 'outside' : 'part';
    const answer = await place.run({ lineId: line.id, kind, supplier, reference, dueOn: dueOn === '' ? null : dueOn });
    if (answer.ok) setOpen(false);
  };
  const came = async () => {
    if (waiting === undefined) return;
    const cost = bill.trim() === '' ? null : readAmount(bill, writing);
    setUnread(bill.trim() !== '' && cost === null);
    if (bill.trim() !== '' && cost === null) return;
    await arrive.run({ id: waiting.id, cost });
  };

  return (
    <div className="wide awaited">
      {all.map((one) => (
        <p className="small" key={one.id}>
          {t('edit.orderedAt', { supplier: one.supplier, when: nearText(one.orderedAt, writing, now) })}
          {one.reference === '' ? '' : `, ${one.reference}`}
          {one.arrivedAt !== null
            ? `; ${t('edit.cameAt', { when: nearText(one.arrivedAt, writing, now) })}`
            : one.dueOn === null
              ? ''
              : `; ${t('bench.due', { day: civilText(one.dueOn, writing) })}`}
        </p>
      ))}
      {waiting !== undefined ? (
        <SmallForm verb={t('edit.came')} onSend={came} busy={arrive.busy}>
          <Field
            label={t('edit.bill')}
            value={bill}
            onChange={setBill}
            figure
            error={unread ? t('sheet.unread', { label: t('edit.bill') }) : null}
          />
        </SmallForm>
      ) : open ? (
        <SmallForm verb={t('edit.noteOrder')} onSend={send} busy={place.busy}>
          <Field label={t('edit.supplier')} value={supplier} onChange={setSupplier} autoFocus maxLength={80} />
          <Field label={t('edit.reference')} value={reference} onChange={setReference} maxLength={60} />
          <Field label={t('edit.dueOn')} type="date" value={dueOn} onChange={setDueOn} />
        </SmallForm>
      ) : (
        <button type="button" className="link small" onClick={() => setOpen(true)}>
          {t(line.kind === 'outside' ? 'edit.sendOut' : 'edit.orderIt')}
        </button>
      )}
      <Wrong error={place.error ?? arrive.error} />
    </div>
  );
}
