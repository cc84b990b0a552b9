import { goTo } from '../../frame/router.ts';
import { newestPaper, paperName } from '../../papers/paper-name.ts';
import { Button } from '../../parts/Button.tsx';
import { PaperLink } from '../../parts/PaperLink.tsx';
import { useWriting } from '../../state/shop.ts';
import { printPaper } from '../../state/transport.ts';
import { useAsk } from '../../state/use-ask.ts';
import { amountText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { nearText } from '../../words/times.ts';
import { MoveBooking } from './MoveBooking.tsx';

/** Names the button that prints an order's newest paper, so that the list's key finds it. */
export const PRINTS = 'order-peek-print';

/** An order opened in its row: jobs with their sums, the yes and the no, the invoice and the other papers. */
export function OrderPeek({ id }: { readonly id: string }) {
  const writing = useWriting();
  const order = useAsk('order.get', { id }).data;
  if (order === undefined) return null;
  const now = Date.now();
  const yes = order.decisions.findLast((decision) => decision.ceiling !== null);
  const refused = order.jobs.filter((job) => job.answer === 'no');
  const invoice = order.papers.findLast((paper) => paper.kind === 'invoice');
  const others = order.papers.filter((paper) => paper.id !== invoice?.id);
  const newest = newestPaper(order);
  return (
    <div className="order-peek">
      <div>
        <h3 className="h4">{t('orders.jobs')}</h3>
        <ul>
          {order.jobs.map((job) => (
            <li key={job.id} className="order-peek-job">
              <b>{job.letter}</b> <span>{job.title}</span>
              <span className="figure">{amountText(job.amount, writing)}</span>
            </li>
          ))}
        </ul>
        {order.jobs.length === 0 ? <p className="said">“{order.complaint}”</p> : null}
      </div>
      <div>
        <h3 className="h4">{t('orders.yes')}</h3>
        {yes === undefined ? (
          <p className="ink-2">{t('orders.noYes')}</p>
        ) : (
          <p className="in-stamp semi">
            {t('orders.yesWords', {
              when: nearText(yes.at, writing, now),
              name: yes.spoken.name,
              sum: amountText(yes.ceiling, writing),
            })}
          </p>
        )}
        {refused.length === 0 ? null : (
          <>
            <h3 className="h4">{t('orders.saidNo')}</h3>
            {refused.map((job) => (
              <p key={job.id}>
                {job.title}, {amountText(job.amount, writing)}
              </p>
            ))}
          </>
        )}
      </div>
      <div>
        <h3 className="h4">{t('orders.invoice')}</h3>
        {invoice === undefined ? (
          <p className="ink-2">{t('orders.noInvoice')}</p>
        ) : (
          <p>
            <PaperLink paperId={invoice.id}>{t('orders.invoiceNumber', { number: invoice.number })}</PaperLink>{' '}
            {t('orders.madeOn', { when: nearText(invoice.issuedAt, writing, now) })}{' '}
            {order.balance === null || order.balance === 0
              ? t('orders.paid')
              : t('orders.owes', { sum: amountText(order.balance, writing) })}
          </p>
        )}
        {others.length === 0 ? null : (
          <p className="order-peek-papers">
            {others.map((paper) => (
              <PaperLink key={paper.id} paperId={paper.id}>
                {paperName(paper)}
              </PaperLink>
            ))}
          </p>
        )}
        <div className="order-peek-acts">
          <Button small onClick={() => goTo('orders', id)}>
            {t('orders.openIt')}
          </Button>
          {newest === undefined ? null : (
            <span className={PRINTS}>
              <Button small keys="Alt+P" onClick={() => printPaper(newest.id)}>
                {t('orders.print')}
              </Button>
            </span>
          )}
        </div>
      </div>
      <MoveBooking order={order} />
    </div>
  );
}
