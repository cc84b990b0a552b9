import { useState } from 'react';
import { PaperLink } from '../parts/PaperLink.tsx';
import { invoiceOf, type Order } from '../sheet/order.ts';
import { useNow } from '../state/now.ts';
import { useWriting } from '../state/shop.ts';
import { amountText } from '../words/figures.ts';
import { t, tMaybe } from '../words/t.ts';
import { nearText } from '../words/times.ts';
import { type PaymentKind, usualKind } from './payment-sums.ts';
import { TakeMoney, type Taken } from './TakeMoney.tsx';

interface Props {
  readonly order: Order;
  readonly onTaken?: () => void;
}

/** What was paid and what is open, and the form for what comes next: a deposit before the invoice, then what is open. */
export function Payments({ order, onTaken }: Props) {
  const writing = useWriting();
  const now = useNow(60_000);
  const [taken, setTaken] = useState<Taken | null>(null);
  const [asked, setAsked] = useState<PaymentKind | null>(null);
  const invoiced = invoiceOf(order) !== undefined;
  const balance = order.balance ?? 0;
  const kind = asked !== null && !invoiced ? asked : usualKind(invoiced, balance);
  const settled = invoiced && balance === 0;
  return (
    <section aria-label={t('sheet.payments')}>
      <h3>
        {t('sheet.payments')}{' '}
        {balance === 0 ? (
          invoiced ? null : (
            <span>{t('papers.depositNow')}</span>
          )
        ) : (
          <span>{t(balance < 0 ? 'sheet.held' : 'sheet.toPay', { sum: amountText(Math.abs(balance), writing) })}</span>
        )}
      </h3>
      <ul>
        {order.payments.map((one) => (
          <li className="pay-row" key={one.id}>
            <span>
              {t(`sheet.pay-${one.kind}`)}
              {one.way === '' ? '' : `, ${tMaybe(`sheet.way-${one.way}`) ?? one.way}`}
            </span>
            <span className="ink-2">{nearText(one.at, writing, now)}</span>
            <b className="figure">{amountText(one.amount, writing)}</b>
            {one.receiptPaperId === null || one.kind === 'rounding' ? null : (
              <PaperLink paperId={one.receiptPaperId}>{t('sheet.receipt')}</PaperLink>
            )}
          </li>
        ))}
      </ul>
      {settled ? <p className="ink-2">{t('papers.nothingOpen')}</p> : null}
      {invoiced && balance < 0 ? (
        <p className="small">{t('papers.owed', { sum: amountText(-balance, writing) })}</p>
      ) : null}
      {settled ? null : (
        <TakeMoney
          key={kind}
          order={order}
          kind={kind}
          onTaken={(now) => {
            setTaken(now);
            onTaken?.();
          }}
        />
      )}
      {taken === null ? null : (
        <p role="status">
          {t(taken.back ? 'papers.givenBack' : 'papers.taken', {
            sum: amountText(taken.sum, writing),
            receipt: taken.receipt,
          })}{' '}
          {taken.change > 0 ? t('papers.changeGiven', { sum: amountText(taken.change, writing) }) : ''}{' '}
          <PaperLink paperId={taken.receiptPaperId}>{t('papers.printReceipt')}</PaperLink>
        </p>
      )}
      {invoiced || balance >= 0 ? null : (
        <p className="pay-open">
          {kind === 'refund' ? (
            <button type="button" className="link" onClick={() => setAsked('deposit')}>
              {t('papers.depositOpen')}
            </button>
          ) : balance < 0 ? (
            <button type="button" className="link" onClick={() => setAsked('refund')}>
              {t('papers.givesBackOpen')}
            </button>
          ) : null}
        </p>
      )}
    </section>
  );
}
