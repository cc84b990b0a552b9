import type { OutputOf } from '../../../core/contract/index.ts';
import { hrefOf } from '../../frame/router.ts';
import { CreditBar } from '../../parts/CreditBar.tsx';
import { useSession } from '../../state/session.ts';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { amountText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { dayText } from '../../words/times.ts';

type Customer = OutputOf<'customer.get'>;

/** What is open of their invoices, order by order, and an account against its limit; where the sums are not for this person, it says so. */
export function Owed({ customer }: { readonly customer: Customer }) {
  const writing = useWriting();
  const desk = useSession((session) => session.person?.role !== 'mechanic');
  const { owed, open } = customer;
  if (owed === null) return <p className="ink-2">{t('customers.notSeen')}</p>;
  return (
    <>
      {open.length === 0 ? (
        <p className="ink-2">{t('customers.owesNothing')}</p>
      ) : (
        <ul className="customer-rows">
          {open.map((order) => (
            <li key={order.id}>
              <a href={hrefOf('orders', order.id)}>
                <b className="semi">{t('customers.order', { number: order.number })}</b>
                <span>{order.car}</span>
                <b className="figure">{amountText(order.toPay, writing)}</b>
              </a>
            </li>
          ))}
          <li className="customer-sum">
            <b>{t('customers.inAll')}</b>
            <b className="figure">{amountText(owed, writing)}</b>
          </li>
        </ul>
      )}
      {desk && customer.fields.creditLimit !== null ? <Credit id={customer.id} /> : null}
    </>
  );
}

/** Owed, said yes to and asked now against the limit, and the orders that wait for the owner's word. */
function Credit({ id }: { readonly id: string }) {
  const writing = useWriting();
  const credit = useAsk('customer.credit', { id }).data;
  if (credit === undefined || credit.limit === null) return null;
  const { limit, openInvoices, authorised, asked, over } = credit;
  const asks = credit.orders.filter((order) => order.asked > 0);
  return (
    <>
      <CreditBar owed={openInvoices} saidYes={authorised} asked={asked} limit={limit} />
      <ul className="small">
        {over === 0
          ? null
          : asks.map((order) => (
              <li key={order.orderId}>
                <a href={hrefOf('orders', order.orderId)}>{t('customers.order', { number: order.number })}</a>{' '}
                {t('customers.creditAsks', { sum: amountText(order.asked, writing) })}
              </li>
            ))}
        {credit.orders
          .filter((order) => order.held)
          .map((order) => (
            <li key={order.orderId}>
              <a href={hrefOf('orders', order.orderId)}>{t('customers.order', { number: order.number })}</a>{' '}
              <b className="in-stop">{t('customers.creditHeld')}</b>
            </li>
          ))}
        {credit.orders.map((order) =>
          order.pass === null ? null : (
            <li key={order.orderId}>
              <a href={hrefOf('orders', order.orderId)}>{t('customers.order', { number: order.number })}</a>{' '}
              {t('customers.creditPassed', {
                ...{ by: order.pass.by, day: dayText(order.pass.at, writing, Date.now()) },
                reason: order.pass.reason,
              })}
            </li>
          ),
        )}
      </ul>
    </>
  );
}
