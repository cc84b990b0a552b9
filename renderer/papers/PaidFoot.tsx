import type { ReactNode } from 'react';
import type { Order } from '../sheet/order.ts';
import { useWriting } from '../state/shop.ts';
import { amountText } from '../words/figures.ts';
import { t } from '../words/t.ts';

/** The foot after the invoice: what it came to, how much of it is paid, drawn and in words; the actions at the right. */
export function PaidFoot({ order, children }: { readonly order: Order; readonly children: ReactNode }) {
  const writing = useWriting();
  const text = (minor: number) => amountText(minor, writing);
  const sumOf = (kind: 'invoice' | 'credit-note') =>
    order.papers.reduce((sum, paper) => (paper.kind === kind ? sum + (paper.gross ?? 0) : sum), 0);
  const invoiced = sumOf('invoice');
  const credited = sumOf('credit-note');
  const open = order.balance ?? 0;
  const paid = invoiced - credited - open;
  const whole = Math.max(invoiced, paid, 1);
  const part = (minor: number) => `${(Math.max(0, Math.min(minor, whole)) * 100) / whole}%`;
  return (
    <section className="foot" aria-label={t('papers.toPay')}>
      <div className="foot-figure">
        <span>{t('papers.invoiced')}</span>
        <b>{text(invoiced)}</b>
      </div>
      <div className="foot-bar">
        <div className="paid-bar" aria-hidden="true">
          <i className="paid" style={{ width: part(paid) }} />
          <i className="credited" style={{ left: part(paid), width: part(Math.min(credited, whole - paid)) }} />
        </div>
        <p>
          {open < 0
            ? t('papers.overPaid', { sum: text(-open) })
            : open === 0
              ? t('papers.allPaid')
              : paid === 0
                ? t('papers.nonePaid')
                : t('papers.partPaid', { paid: text(paid), open: text(open) })}{' '}
          {credited === 0 ? '' : t('papers.credited', { sum: text(credited) })}
        </p>
      </div>
      <div className="foot-figure figure">
        <span>{t(open < 0 ? 'papers.toGiveBack' : 'papers.toPay')}</span>
        <b>{text(Math.abs(open))}</b>
      </div>
      <div className="foot-actions">{children}</div>
    </section>
  );
}
