import { useDeferredValue, useRef, useState } from 'react';
import { useKey } from '../../frame/keys.ts';
import { Page } from '../../frame/Page.tsx';
import { goTo } from '../../frame/router.ts';
import { Button } from '../../parts/Button.tsx';
import { t } from '../../words/t.ts';
import { OrderRows } from './OrderRows.tsx';
import './orders.css';

const WHICH = ['open', 'unpaid', 'all'] as const;
type Which = (typeof WHICH)[number];
const WEEK = 7 * 86_400_000;

/** Every order, newest first, under one sentence that says which; rows by the arrow keys, a peek with Space. */
export function OrderList() {
  const [which, setWhich] = useState<Which>('open');
  const [text, setText] = useState('');
  const asked = useDeferredValue(text.trim());
  const list = useRef<HTMLDivElement>(null);
  const filter = useRef<HTMLSelectElement>(null);
  /** Where each further piece of the list begins. */
  const [older, setOlder] = useState<readonly number[]>([]);

  const rowsOf = () => [...(list.current?.querySelectorAll<HTMLAnchorElement>('a.order-row') ?? [])];
  const step = (by: number) => {
    const rows = rowsOf();
    const at = rows.findIndex((row) => row.matches(':focus'));
    rows[at < 0 ? 0 : (at + by + rows.length) % rows.length]?.focus();
  };
  const weekOn = () => {
    const rows = rowsOf();
    const here = rows.find((row) => row.matches(':focus')) ?? rows[0];
    const from = Number(here?.dataset.at ?? 0) - WEEK;
    (rows.find((row) => Number(row.dataset.at) <= from) ?? rows.at(-1))?.focus();
  };
  useKey('ArrowDown', () => step(1));
  useKey('ArrowUp', () => step(-1));
  useKey('PageDown', weekOn);
  useKey('F', () => filter.current?.focus());
  const begin = (change: () => void) => {
    change();
    setOlder([]);
  };

  return (
    <Page
      title={t('orders.title')}
      actions={
        <Button kind="go" keys="N" onClick={() => goTo('today', 'book')}>
          {t('orders.book')}
        </Button>
      }
      foot={
        <p className="orders-keys">
          {(['rows', 'peek', 'open', 'week', 'filter'] as const).map((key) => (
            <span key={key}>
              <kbd>{t(`orders.key-${key}`)}</kbd> {t(`orders.does-${key}`)}
            </span>
          ))}
        </p>
      }
    >
      <search className="orders-filter">
        {t('orders.show')}{' '}
        <select
          ref={filter}
          aria-label={t('orders.which')}
          value={which}
          onChange={(event) => begin(() => setWhich(WHICH.find((one) => one === event.target.value) ?? 'all'))}
        >
          {WHICH.map((one) => (
            <option key={one} value={one}>
              {t(`orders.${one}`)}
            </option>
          ))}
        </select>{' '}
        {t('orders.thatHold')}{' '}
        <input
          aria-label={t('orders.text')}
          placeholder={t('orders.anyWords')}
          maxLength={60}
          value={text}
          onChange={(event) => begin(() => setText(event.target.value))}
        />
        {t('orders.newestFirst')}
      </search>
      <div ref={list}>
        {[null, ...older].map((before, at) => (
          <OrderRows
            key={before ?? 'newest'}
            which={which}
            text={asked}
            before={before}
            first={at === 0}
            last={at === older.length}
            onOlder={(next) => setOlder([...older, next])}
          />
        ))}
      </div>
    </Page>
  );
}
