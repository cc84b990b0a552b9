import { useState } from 'react';
import type { InputOf } from '../../core/contract/index.ts';
import { Button } from '../parts/Button.tsx';
import { Choice } from '../parts/Choice.tsx';
import { Field } from '../parts/Field.tsx';
import { PaperLink } from '../parts/PaperLink.tsx';
import { useNow } from '../state/now.ts';
import { useWriting } from '../state/shop.ts';
import { useDo } from '../state/use-do.ts';
import { amountText, readAmount } from '../words/figures.ts';
import { t, tMaybe } from '../words/t.ts';
import { nearText } from '../words/times.ts';
import { invoiceOf, type Order } from './order.ts';
import { Wrong } from './Wrong.tsx';

type Kind = InputOf<'payment.take'>['kind'];
type Way = InputOf<'payment.take'>['way'];
const WAYS: readonly Way[] = ['cash', 'card', 'transfer'];

/** What was paid and what is open; money is taken or given back here. */
export function Payments({ order }: { readonly order: Order }) {
  const writing = useWriting();
  const now = useNow(60_000);
  const take = useDo('payment.take');
  const invoice = invoiceOf(order);
  const balance = order.balance ?? 0;
  const kinds: readonly Kind[] = invoice ? ['payment', 'refund'] : ['deposit', 'refund'];
  const [chosen, setKind] = useState<Kind | null>(null);
  const kind =
    chosen !== null && kinds.includes(chosen) ? chosen : invoice && balance < 0 ? 'refund' : (kinds[0] ?? 'deposit');
  const [way, setWay] = useState<Way>('card');
  const [typed, setTyped] = useState<string | null>(null);
  const [unread, setUnread] = useState<string | null>(null);
  const [handed, setHanded] = useState<string | null>(null);
  const usual = kind === 'payment' && balance > 0 ? balance : kind === 'refund' && balance < 0 ? -balance : null;
  const text = typed ?? amountText(usual, writing);

  const go = async () => {
    const amount = readAmount(text, writing);
    if (amount === null || amount < 1) return setUnread(t('sheet.unread', { label: t('sheet.payAmount') }));
    setUnread(null);
    const answer = await take.run({ orderId: order.id, kind, way, amount, invoicePaperId: invoice?.id ?? null });
    if (!answer.ok) return;
    setTyped(null);
    setHanded(t('sheet.handed', { n: answer.output.receiptNumber, sum: amountText(answer.output.handed, writing) }));
  };
  return (
    <section aria-label={t('sheet.payments')}>
      <h3>
        {t('sheet.payments')}{' '}
        {balance === 0 ? null : (
          <span>{t(balance < 0 ? 'sheet.held' : 'sheet.toPay', { sum: amountText(Math.abs(balance), writing) })}</span>
        )}
      </h3>
      <ul>
        {order.payments.map((one) => (
          <li className="pay-row" key={one.id}>
            <span>
              {t(`sheet.pay-${one.kind}`)}, {tMaybe(`sheet.way-${one.way}`) ?? one.way}
            </span>
            <span className="ink-2">{nearText(one.at, writing, now)}</span>
            <b className="figure">{amountText(one.amount, writing)}</b>
            {one.receiptPaperId === null ? null : (
              <PaperLink paperId={one.receiptPaperId}>{t('sheet.receipt')}</PaperLink>
            )}
          </li>
        ))}
      </ul>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void go();
        }}
      >
        <Choice
          label={t('sheet.payKind')}
          quiet
          value={kind}
          options={kinds.map((value) => ({ value, words: t(`sheet.pay-${value}`) }))}
          onChange={setKind}
        />
        <Choice
          label={t('sheet.payWay')}
          quiet
          value={way}
          options={WAYS.map((value) => ({ value, words: t(`sheet.way-${value}`) }))}
          onChange={setWay}
        />
        <Field
          label={t('sheet.payAmount')}
          value={text}
          onChange={setTyped}
          figure
          inputMode="decimal"
          error={unread}
        />
        <Button type="submit" disabled={take.busy}>
          {t(kind === 'refund' ? 'sheet.payBack' : 'sheet.payTake')}
        </Button>
        {handed === null ? null : <p role="status">{handed}</p>}
        <Wrong error={take.error} />
      </form>
    </section>
  );
}
