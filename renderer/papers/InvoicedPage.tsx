import { useEffect, useRef, useState } from 'react';
import { Bench } from '../bench/Bench.tsx';
import { useKey } from '../frame/keys.ts';
import { TwoSides } from '../frame/TwoSides.tsx';
import { Button } from '../parts/Button.tsx';
import { OrderContact } from '../places/contact/OrderContact.tsx';
import type { Order } from '../sheet/order.ts';
import { Sheet } from '../sheet/Sheet.tsx';
import { useNow } from '../state/now.ts';
import { useWriting } from '../state/shop.ts';
import { openPaper } from '../state/transport.ts';
import { t } from '../words/t.ts';
import { nearText } from '../words/times.ts';
import { BeforeItGoes } from './BeforeItGoes.tsx';
import { CreditNote } from './CreditNote.tsx';
import { HAND_FORM, HandOver } from './HandOver.tsx';
import { PaidFoot } from './PaidFoot.tsx';
import { Papers } from './Papers.tsx';
import { Payments } from './Payments.tsx';
import { type Paper, paperName } from './paper-name.ts';
import { Sent } from './Sent.tsx';
import { MONEY_FORM } from './TakeMoney.tsx';

interface Props {
  readonly order: Order;
  readonly invoice: Paper;
  /** It was made just now: the hand goes to printing it. */
  readonly fresh: boolean;
}

const nothing = () => {};

/** After the invoice: the paper as it was issued, and beside it printing, paying and handing over. */
export function InvoicedPage({ order, invoice, fresh }: Props) {
  const writing = useWriting();
  const now = useNow(60_000);
  const [jobId, setJobId] = useState<string | null>(null);
  const print = useRef<HTMLButtonElement>(null);
  const main = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (fresh) print.current?.focus();
  }, [fresh]);
  const balance = order.balance ?? 0;
  const [form, words] =
    balance > 0
      ? ([MONEY_FORM, t('papers.takeIt')] as const)
      : balance < 0
        ? ([MONEY_FORM, t('papers.giveBack')] as const)
        : order.handedOverAt === null
          ? ([HAND_FORM, t('papers.handIt')] as const)
          : ([null, ''] as const);
  const go = () => {
    if (form !== null) send(form);
  };
  useKey('Ctrl+Enter', go, form !== null);
  // What was done has changed the main action; the hand stays on it.
  const [times, setTimes] = useState(0);
  const onDone = () => setTimes((before) => before + 1);
  useEffect(() => {
    if (times > 0) main.current?.focus();
  }, [times]);
  return (
    <TwoSides
      first="bench"
      sheetLabel={`${t('sheet.order')} ${order.number}`}
      sheet={<Sheet order={order} locked current={undefined} onCurrent={nothing} />}
      benchLabel={paperName(invoice)}
      bench={
        <>
          <header className="bench-head">
            <h2>{paperName(invoice)}</h2>
            <span>{t('papers.made', { when: nearText(invoice.issuedAt, writing, now) })}</span>
          </header>
          <section className="invoice-paper">
            <Button ref={print} keys="Alt+P" onClick={() => openPaper(invoice.id)}>
              {t('papers.open')}
            </Button>
            <Sent order={order} paper={invoice} />
          </section>
          <Payments order={order} onTaken={onDone} />
          <BeforeItGoes order={order} />
          <HandOver order={order} onDone={onDone} />
          <OrderContact order={order} />
          <Papers order={order} without={invoice.id} />
          <CreditNote order={order} />
          <details className="afterwards">
            <summary>{t('papers.bench')}</summary>
            <Bench order={order} job={order.jobs.find((one) => one.id === jobId) ?? order.jobs[0]} onJob={setJobId} />
          </details>
        </>
      }
      foot={
        <PaidFoot order={order}>
          {form === null ? null : (
            <Button ref={main} kind="go" keys="Ctrl+Enter" onClick={go}>
              {words}
            </Button>
          )}
        </PaidFoot>
      }
    />
  );
}

function send(id: string): void {
  const form = document.getElementById(id);
  if (form instanceof HTMLFormElement) form.requestSubmit();
}
