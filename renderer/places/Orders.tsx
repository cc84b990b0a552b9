import { useState } from 'react';
import { Page } from '../frame/Page.tsx';
import { goTo, hrefOf } from '../frame/router.ts';
import { Button } from '../parts/Button.tsx';
import { Choice } from '../parts/Choice.tsx';
import { Empty } from '../parts/Empty.tsx';
import { Field } from '../parts/Field.tsx';
import { Loading } from '../parts/Loading.tsx';
import { NotSaved } from '../parts/Notice.tsx';
import { Plate } from '../parts/Plate.tsx';
import { useWriting } from '../state/shop.ts';
import { useAsk } from '../state/use-ask.ts';
import { figureWords } from '../words/error-sentence.ts';
import { amountText } from '../words/figures.ts';
import { t, tMaybe } from '../words/t.ts';
import type { PlaceProps } from './index.ts';
import { OrderPage } from './OrderPage.tsx';
import './orders.css';

const WHICH = ['open', 'unpaid', 'all'] as const;

/** The place Orders: the list, or one order's sheet. */
export default function Orders({ path }: PlaceProps) {
  const [id, beside = ''] = path;
  return id === undefined ? <OrderList /> : <OrderPage key={id} id={id} beside={beside} />;
}

function OrderList() {
  const writing = useWriting();
  const [which, setWhich] = useState<(typeof WHICH)[number]>('open');
  const [text, setText] = useState('');
  const asked = useAsk('order.list', { which, text });
  const rows = asked.data?.rows ?? [];
  return (
    <Page title={t('orders.title')} actions={<Button onClick={() => goTo('today', 'book')}>{t('orders.book')}</Button>}>
      <div className="orders-filter">
        <Choice
          label={t('orders.which')}
          quiet
          joined
          value={which}
          options={WHICH.map((value) => ({ value, words: t(`orders.${value}`) }))}
          onChange={setWhich}
        />
        <Field label={t('orders.text')} value={text} onChange={setText} />
      </div>
      <NotSaved error={asked.error} />
      {asked.loading ? <Loading rows={8} /> : null}
      {asked.data !== undefined && rows.length === 0 ? <Empty>{t('orders.none')}</Empty> : null}
      {rows.length === 0 ? null : (
        <table className="orders">
          <thead>
            <tr>
              <th>{t('orders.number')}</th>
              <th>{t('orders.plate')}</th>
              <th>{t('orders.carAndCustomer')}</th>
              <th>{t('orders.jobs')}</th>
              <th>{t('orders.next')}</th>
              <th className="figure">{t('orders.sum')}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.id}>
                <td>
                  <a href={hrefOf('orders', row.id)}>{row.number}</a>
                </td>
                <td>
                  <Plate plate={row.plate} />
                </td>
                <td>
                  <b>{row.car}</b>
                  <br />
                  <span className="small ink-2">{row.customer}</span>
                </td>
                <td>{row.titles.join(', ')}</td>
                <td className={row.next.promise === 'late' ? 'in-stop semi' : 'semi'}>
                  {tMaybe(`next.${row.next.what}`, figureWords(row.next.with, writing)) ?? row.next.what}
                </td>
                <td className="figure">{amountText(row.gross, writing)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </Page>
  );
}
