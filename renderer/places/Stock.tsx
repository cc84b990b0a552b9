import { useDeferredValue, useRef, useState } from 'react';
import { Page } from '../frame/Page.tsx';
import { goTo } from '../frame/router.ts';
import { Button } from '../parts/Button.tsx';
import { Empty } from '../parts/Empty.tsx';
import { Field } from '../parts/Field.tsx';
import { Loading } from '../parts/Loading.tsx';
import { Notice } from '../parts/Notice.tsx';
import { useRowKeys } from '../parts/row-keys.ts';
import { useSession } from '../state/session.ts';
import { useWriting } from '../state/shop.ts';
import { useAsk } from '../state/use-ask.ts';
import { errorSentence } from '../words/error-sentence.ts';
import { t } from '../words/t.ts';
import type { PlaceProps } from './index.ts';
import { BuyNext, OnTheWay } from './stock/Coming.tsx';
import { Delivery } from './stock/Delivery.tsx';
import { UsedOilPage } from './stock/fluids/UsedOilPage.tsx';
import { NewPart } from './stock/NewPart.tsx';
import { PartOpen } from './stock/PartOpen.tsx';
import { Still } from './stock/Still.tsx';
import { StockKey } from './stock/StockBar.tsx';
import { StockList } from './stock/StockList.tsx';
import './stock/stock.css';

/** The place Stock: its parts, or the log of used oil. */
export default function Stock({ path }: PlaceProps) {
  return path[0] === 'fluids' ? <UsedOilPage /> : <Parts path={path} />;
}

/** Parts by bin, what to buy and what is on the way; a part, a delivery or a new part opens beside. */
function Parts({ path }: Pick<PlaceProps, 'path'>) {
  const writing = useWriting();
  const mayChange = useSession((session) => session.person?.role !== 'mechanic');
  const [text, setText] = useState('');
  const list = useRef<HTMLDivElement>(null);
  useRowKeys(list, 'a.stock-row');
  const asked = useAsk('stock.get', { text: useDeferredValue(text), most: 200 });
  const { rows = [], onTheWay = [], count = 0 } = asked.data ?? {};
  const [beside, partId = null] = path;
  const open = rows.find((row) => row.id === beside);
  const empty = asked.data !== undefined && count === 0;
  const actions = (
    <>
      <Button onClick={() => goTo('stock', 'fluids')}>{t('fluids.open')}</Button>
      {mayChange ? (
        <>
          <Button onClick={() => goTo('stock', 'new')}>{t('stock.add')}</Button>
          <Button kind={beside === undefined && !empty ? 'go' : 'plain'} onClick={() => goTo('stock', 'delivery')}>
            {t('stock.delivery')}
          </Button>
        </>
      ) : null}
    </>
  );
  return (
    <Page title={t('stock.title')} words={t('stock.words')} actions={actions}>
      <div className="columns" data-open={beside === undefined ? undefined : ''}>
        <div ref={list}>
          <div className="stock-find">
            <Field label={t('stock.find')} value={text} onChange={setText} maxLength={60} />
            <StockKey />
          </div>
          {asked.error && !asked.data ? <Notice>{errorSentence(asked.error, writing)}</Notice> : null}
          {asked.loading ? <Loading rows={8} /> : null}
          {empty ? <Empty>{t(text === '' ? 'stock.none' : 'stock.noneFound')}</Empty> : null}
          <StockList rows={rows} openId={open?.id ?? null} />
          {count > rows.length ? <p className="ink-2">{t('stock.more', { n: rows.length, count })}</p> : null}
        </div>
        <aside>
          {beside === 'new' ? <NewPart /> : null}
          {beside === 'delivery' ? <Delivery key={partId} rows={rows} partId={partId} /> : null}
          {open === undefined ? null : <PartOpen key={open.id} row={open} mayChange={mayChange} />}
          <BuyNext rows={rows} />
          <OnTheWay rows={onTheWay} mayChange={mayChange} />
          <Still />
        </aside>
      </div>
    </Page>
  );
}
