import { type ReactNode, useState } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { Page } from '../../frame/Page.tsx';
import { goTo, hrefOf } from '../../frame/router.ts';
import { Button } from '../../parts/Button.tsx';
import { Empty } from '../../parts/Empty.tsx';
import { Loading } from '../../parts/Loading.tsx';
import { useSession } from '../../state/session.ts';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { amountText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { dayText } from '../../words/times.ts';
import { ContactLog } from '../contact/ContactLog.tsx';
import { AnswerHours } from './AnswerHours.tsx';
import { CarsOf } from './CarsOf.tsx';
import { Consents } from './Consents.tsx';
import { CounterSale } from './CounterSale.tsx';
import { Note, Reach, Terms } from './CustomerFields.tsx';
import { Doubles } from './Doubles.tsx';
import { MayYes } from './MayYes.tsx';
import { Owed } from './Owed.tsx';
import { Privacy } from './Privacy.tsx';
import { StatementPart } from './StatementPart.tsx';
import './list.css';
import './customer.css';

type Customer = OutputOf<'customer.get'>;

/** One customer: how to reach them, who may say yes, their cars; what they owe, terms and orders. */
export function CustomerPage({ id }: { readonly id: string }) {
  const writing = useWriting();
  const { data, error, loading } = useAsk('customer.get', { id });
  const [sale, showSale] = useState(false);
  const desk = useSession((session) => session.person?.role !== 'mechanic');
  if (data === undefined)
    return (
      <Page title={t('customers.title')}>
        {error ? <Empty>{errorSentence(error, writing)}</Empty> : null}
        {loading ? <Loading rows={8} /> : null}
      </Page>
    );
  const { fields, cars, orders } = data;
  return (
    <Page
      title={fields.name}
      words={
        <>
          {t('customers.head', {
            day: dayText(data.since, writing, Date.now()),
            orders: t('customers.orderCount', { n: orders.length }),
            cars: t('customers.carCount', { n: cars.length }),
          })}{' '}
          {data.noShows === 0 ? null : <b className="in-heed">{t('customers.noShows', { n: data.noShows })}</b>}
        </>
      }
      actions={
        <>
          {desk ? (
            <Button expanded={sale} onClick={() => showSale(!sale)}>
              {t('customers.sale')}
            </Button>
          ) : null}
          <Button kind="go" onClick={() => goTo('today', 'book', 'customer', id)}>
            {t('customers.newOrder')}
          </Button>
        </>
      }
    >
      {sale ? <CounterSale customer={{ id, name: fields.name }} /> : null}
      {desk ? <Doubles customer={data} /> : null}
      <div className="customer">
        <div>
          <Part head={t('customers.reach')}>
            <Reach customer={data} />
          </Part>
          <Part head={t('customers.mayYes')}>
            <MayYes customer={data} />
          </Part>
          {desk ? (
            <Part head={t('customers.talked')}>
              <AnswerHours id={id} />
              <ContactLog customerId={id} />
            </Part>
          ) : null}
          <Part head={t('customers.cars')}>
            <CarsOf customer={data} />
          </Part>
          <Part head={t('customers.note')}>
            <Note customer={data} />
          </Part>
        </div>
        <div>
          <Part head={t('customers.owe')}>
            <Owed customer={data} />
            {desk ? <StatementPart customer={{ id, name: fields.name, email: fields.email }} /> : null}
          </Part>
          <Part head={t('customers.terms')}>
            <Terms customer={data} />
          </Part>
          <Part head={t('customers.agreed')}>
            <Consents customer={data} />
          </Part>
          <Part head={t('customers.orders')}>
            <Orders orders={orders} />
          </Part>
          {desk ? (
            <Part head={t('privacy.title')}>
              <Privacy id={id} />
            </Part>
          ) : null}
        </div>
      </div>
    </Page>
  );
}

function Part({ head, children }: { readonly head: string; readonly children: ReactNode }) {
  return (
    <section className="customer-part">
      <h2>{head}</h2>
      {children}
    </section>
  );
}

function Orders({ orders }: { readonly orders: Customer['orders'] }) {
  const writing = useWriting();
  const now = Date.now();
  if (orders.length === 0) return <p className="ink-2">{t('customers.noOrders')}</p>;
  return (
    <ul className="customer-rows">
      {orders.map((order) => (
        <li key={order.id}>
          <a href={hrefOf('orders', order.id)}>
            <b className="semi">{order.number}</b>
            <span>
              <span className="ink-2">{dayText(order.openedAt, writing, now)}</span> {order.car}
            </span>
            <span className="figure">
              {order.toPay === null || order.toPay <= 0
                ? null
                : t('customers.toPay', { sum: amountText(order.toPay, writing) })}
            </span>
          </a>
        </li>
      ))}
    </ul>
  );
}
