import { useState } from 'react';
import { handedOver } from '../../core/money/cash.ts';
import { money } from '../../core/money/money.ts';
import { Button } from '../parts/Button.tsx';
import { Choice } from '../parts/Choice.tsx';
import { Field } from '../parts/Field.tsx';
import { invoiceOf, type Order } from '../sheet/order.ts';
import { Wrong } from '../sheet/Wrong.tsx';
import { useShop, useWriting } from '../state/shop.ts';
import { useDo } from '../state/use-do.ts';
import { amountText, readAmount } from '../words/figures.ts';
import { t } from '../words/t.ts';
import { type PaymentKind, type PaymentWay, usualWay } from './payment-sums.ts';

/** The form that the main action of the foot sends. */
export const MONEY_FORM = 'take-money';
const WAYS: readonly PaymentWay[] = ['cash', 'card', 'transfer'];

interface Props {
  readonly order: Order;
  readonly kind: PaymentKind;
  readonly onTaken: (taken: Taken) => void;
}

/** What just changed hands; sums in minor units. */
export interface Taken {
  readonly sum: number;
  readonly receipt: number;
  readonly receiptPaperId: string;
  /** Of cash, given back over the counter. */
  readonly change: number;
  readonly back: boolean;
}

/** Takes money, or gives it back: how, how much, and for cash what was handed over and the change. */
export function TakeMoney({ order, kind, onTaken }: Props) {
  const writing = useWriting();
  const cashStep = useShop()?.settings?.cashStep ?? 1;
  const take = useDo('payment.take');
  const balance = order.balance ?? 0;
  const [way, setWay] = useState(usualWay(kind, order.payments));
  const [typed, setTyped] = useState<string | null>(null);
  const [given, setGiven] = useState('');
  const [unread, setUnread] = useState(false);
  const usual = kind === 'deposit' ? null : Math.abs(balance);
  const text = typed ?? amountText(usual, writing);
  const amount = readAmount(text, writing);
  const cash = amount === null ? null : handedOver(way, money(amount), cashStep);
  const handed = way === 'cash' && kind !== 'refund' && given.trim() !== '' ? readAmount(given, writing) : null;
  const change = handed === null || cash === null ? 0 : handed - cash.payable;

  const go = async () => {
    const readable = amount !== null && amount >= 1;
    setUnread(!readable);
    if (!readable || change < 0 || take.busy) return;
    const answer = await take.run({
      orderId: order.id,
      kind,
      way,
      amount,
      invoicePaperId: invoiceOf(order)?.id ?? null,
    });
    if (!answer.ok) return;
    const { handed: sum, receiptNumber, receiptPaperId } = answer.output;
    setTyped(null);
    setGiven('');
    onTaken({ sum, receipt: receiptNumber, receiptPaperId, change, back: kind === 'refund' });
  };
  return (
    <form
      id={MONEY_FORM}
      className="take-money"
      onSubmit={(event) => {
        event.preventDefault();
        void go();
      }}
    >
      <Choice
        label={t('sheet.payWay')}
        quiet
        value={way}
        options={WAYS.map((value) => ({ value, words: t(`sheet.way-${value}`) }))}
        onChange={setWay}
      />
      <div className="row-form">
        <Field
          label={t('sheet.payAmount')}
          value={text}
          onChange={setTyped}
          figure
          inputMode="decimal"
          error={unread ? t('sheet.unread', { label: t('sheet.payAmount') }) : null}
        />
        {way === 'cash' && kind !== 'refund' ? (
          <Field
            label={t('papers.cashGiven')}
            value={given}
            onChange={setGiven}
            figure
            inputMode="decimal"
            error={change < 0 ? t('papers.short', { sum: amountText(-change, writing) }) : null}
          />
        ) : null}
        <Button type="submit" disabled={take.busy}>
          {t(kind === 'refund' ? 'sheet.payBack' : 'sheet.payTake')}
        </Button>
      </div>
      {cash === null || cash.difference === 0 ? null : (
        <p className="small">
          {t('papers.cashSum', {
            sum: amountText(cash.payable, writing),
            difference: amountText(cash.difference, writing),
          })}
        </p>
      )}
      {change > 0 ? <p className="semi">{t('papers.change', { sum: amountText(change, writing) })}</p> : null}
      <Wrong error={take.error} />
    </form>
  );
}
