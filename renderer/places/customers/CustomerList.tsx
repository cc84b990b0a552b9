import { useDeferredValue, useRef, useState } from 'react';
import { Page } from '../../frame/Page.tsx';
import { goTo, hrefOf } from '../../frame/router.ts';
import { Button } from '../../parts/Button.tsx';
import { Empty } from '../../parts/Empty.tsx';
import { Field } from '../../parts/Field.tsx';
import { useRowKeys } from '../../parts/row-keys.ts';
import { useSession } from '../../state/session.ts';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { t } from '../../words/t.ts';
import { dayText } from '../../words/times.ts';
import { CounterSale } from './CounterSale.tsx';
import './list.css';
import './customer.css';

/** Everybody who has brought a car, by name. */
export function CustomerList() {
  const [text, setText] = useState('');
  const [sale, showSale] = useState(false);
  const desk = useSession((session) => session.person?.role !== 'mechanic');
  const writing = useWriting();
  const list = useRef<HTMLUListElement>(null);
  useRowKeys(list, 'a');
  const { data, error } = useAsk('customer.list', { text: useDeferredValue(text), most: 200 });
  return (
    <Page
      title={t('customers.title')}
      actions={
        desk ? (
          <>
            <Button expanded={sale} onClick={() => showSale(!sale)}>
              {t('customers.sale')}
            </Button>
            <Button onClick={() => goTo('customers', 'reminders')}>{t('reminders.toList')}</Button>
          </>
        ) : null
      }
    >
      {sale ? <CounterSale customer={null} /> : null}
      <div className="list-find">
        <Field label={t('customers.find')} value={text} onChange={setText} maxLength={60} />
      </div>
      {error && !data ? <p role="alert">{errorSentence(error, writing)}</p> : null}
      {data?.rows.length === 0 ? <Empty>{t('customers.none')}</Empty> : null}
      <ul className="list-rows" ref={list}>
        {(data?.rows ?? []).map((row) => (
          <li key={row.id}>
            <a href={hrefOf('customers', row.id)}>
              <b>{row.name}</b>
              <span>{row.phone}</span>
              <span>{t('customers.carCount', { n: row.cars })}</span>
              <span className="figure">
                {row.lastVisit === null ? t('customers.never') : dayText(row.lastVisit, writing, Date.now())}
              </span>
            </a>
          </li>
        ))}
      </ul>
    </Page>
  );
}
