import { Page } from '../../frame/Page.tsx';
import { hrefOf } from '../../frame/router.ts';
import { Cell } from '../../parts/Cell.tsx';
import { Plate } from '../../parts/Plate.tsx';
import { act, ask } from '../../state/call.ts';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { amountText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { dayText } from '../../words/times.ts';
import { Talk } from '../book-in/Talk.tsx';
import { fieldSaver } from './field-saver.ts';
import './list.css';

const FIELDS = ['name', 'phone', 'phone2', 'email', 'tellBy', 'taxNumber', 'note'] as const;

/** One customer: who they are, their cars, their orders and what they owe. Each cell saves on leaving it. */
export function CustomerPage({ id }: { readonly id: string }) {
  const writing = useWriting();
  const { data, error } = useAsk('customer.get', { id });
  if (data === undefined)
    return (
      <Page title={t('customers.title')}>{error ? <p role="alert">{errorSentence(error, writing)}</p> : null}</Page>
    );
  const { fields, cars, orders, owed } = data;
  const now = Date.now();
  const owing =
    owed === null
      ? ''
      : owed > 0
        ? t('customers.owed', { sum: amountText(owed, writing) })
        : t('customers.owesNothing');
  return (
    <Page title={fields.name} words={`${t('customers.since', { day: dayText(data.since, writing, now) })} ${owing}`}>
      <Talk head={t('customers.about')}>
        <dl className="list-fields">
          {FIELDS.map((field) => (
            <div key={field}>
              <dt>{t(`customers.${field}`)}</dt>
              <dd>
                <Cell
                  label={t(`customers.${field}`)}
                  value={fields[field]}
                  save={fieldSaver(field, {
                    row: data,
                    send: ({ revision, fields }) => act('customer.change', { id, revision, change: fields }),
                    read: () => ask('customer.get', { id }),
                  })}
                />
              </dd>
            </div>
          ))}
        </dl>
      </Talk>
      <Talk head={t('customers.cars')}>
        {cars.length === 0 ? <p className="ink-2">{t('customers.noCars')}</p> : null}
        <ul className="list-rows">
          {cars.map((car) => (
            <li key={car.id}>
              <a href={hrefOf('cars', car.id)}>
                <span>{car.plate === '' ? null : <Plate plate={car.plate} />}</span>
                <b>{car.words}</b>
                <span>{car.year}</span>
              </a>
            </li>
          ))}
        </ul>
      </Talk>
      <Talk head={t('customers.orders')}>
        {orders.length === 0 ? <p className="ink-2">{t('customers.noOrders')}</p> : null}
        <ul className="list-rows">
          {orders.map((order) => (
            <li key={order.id}>
              <a href={hrefOf('orders', order.id)}>
                <b>{t('customers.order', { number: order.number })}</b>
                <span>{dayText(order.openedAt, writing, now)}</span>
                <span>{order.car}</span>
                <span className="figure">
                  {order.toPay === null || order.toPay <= 0
                    ? null
                    : t('customers.toPay', { sum: amountText(order.toPay, writing) })}
                </span>
              </a>
            </li>
          ))}
        </ul>
      </Talk>
    </Page>
  );
}
