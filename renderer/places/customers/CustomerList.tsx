import { useDeferredValue, useState } from 'react';
import { Page } from '../../frame/Page.tsx';
import { hrefOf } from '../../frame/router.ts';
import { Empty } from '../../parts/Empty.tsx';
import { Field } from '../../parts/Field.tsx';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { t } from '../../words/t.ts';
import { dayText } from '../../words/times.ts';
import './list.css';

/** Everybody who has brought a car, by name. */
export function CustomerList() {
  const [text, setText] = useState('');
  const writing = useWriting();
  const { data, error } = useAsk('customer.list', { text: useDeferredValue(text), most: 200 });
  return (
    <Page title={t('customers.title')}>
      <div className="list-find">
        <Field label={t('customers.find')} value={text} onChange={setText} maxLength={60} />
      </div>
      {error && !data ? <p role="alert">{errorSentence(error, writing)}</p> : null}
      {data?.rows.length === 0 ? <Empty>{t('customers.none')}</Empty> : null}
      <ul className="list-rows">
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
