import { useDeferredValue, useMemo, useRef, useState } from 'react';
import { type Combo, keyName } from '../../frame/key-map.ts';
import { useKey } from '../../frame/keys.ts';
import { Page } from '../../frame/Page.tsx';
import { goTo } from '../../frame/router.ts';
import { Button } from '../../parts/Button.tsx';
import { Empty } from '../../parts/Empty.tsx';
import { Loading } from '../../parts/Loading.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { t } from '../../words/t.ts';
import { monthText } from '../../words/times.ts';
import { FilterSentence } from './FilterSentence.tsx';
import { goToWeek } from './go-to-week.ts';
import { MonthBar } from './MonthBar.tsx';
import { monthsOf } from './months.ts';
import { PRINTS } from './OrderPeek.tsx';
import type { OrderFilter, Week } from './OrderWeek.tsx';
import { OrderWeeks } from './OrderWeeks.tsx';
import { SaveOrders } from './SaveOrders.tsx';
import { useRange } from './use-range.ts';
import './orders.css';

const WEEK = 7 * 86_400_000;
/** The shortest questions, each with its count. */
const JUST = ['open', 'unpaid', 'refused', 'cameBack', 'lab', 'oldUnit'] as const;
const NONE: readonly Week[] = [];

/** The keys of the list, as its foot tells them. */
const FOOT: readonly (readonly [readonly Combo[], 'rows' | 'peek' | 'open' | 'print' | 'week' | 'filter'])[] = [
  [['ArrowUp', 'ArrowDown'], 'rows'],
  [['Space'], 'peek'],
  [['Enter'], 'open'],
  [['Alt+P'], 'print'],
  [['PageDown'], 'week'],
  [['F'], 'filter'],
];

/** Every order, newest first, under one sentence that says which; rows by the arrow keys, a peek with Space. */
export function OrderList() {
  const writing = useWriting();
  const [typed, setTyped] = useState<OrderFilter>({ which: 'open', year: null, text: '' });
  const text = useDeferredValue(typed.text.trim());
  const { which, year } = typed;
  const filter = useMemo(() => ({ which, year, text }), [which, year, text]);
  const { data, error, loading } = useAsk('order.weeks', { filter });
  const counts = useAsk('order.counts', {}).data;
  const weeks = data?.weeks ?? NONE;
  const months = useMemo(() => monthsOf(weeks, writing.zone), [weeks, writing.zone]);
  const list = useRef<HTMLDivElement>(null);
  const range = useRange(list, weeks);

  const rowsOf = () => [...(list.current?.querySelectorAll<HTMLAnchorElement>('a.order-row') ?? [])];
  const step = (by: number) => {
    const rows = rowsOf();
    const at = rows.findIndex((row) => row.matches(':focus'));
    rows[at < 0 ? 0 : Math.min(rows.length - 1, Math.max(0, at + by))]?.focus();
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
  // Of the order that has the focus; elsewhere, of the one that was peeked into alone.
  useKey('Alt+P', ({ target }) => {
    const row = target instanceof Element ? target.closest('.orders-day li') : null;
    const prints = [...((row ?? list.current)?.querySelectorAll<HTMLButtonElement>(`.${PRINTS} button`) ?? [])];
    if (prints.length === 1) prints[0]?.click();
  });

  return (
    <Page
      title={t('orders.title')}
      words={
        data === undefined || counts === undefined || counts.first === null
          ? undefined
          : t('orders.since', {
              ...{ n: data.total, open: counts.open },
              month: monthText(new Date(counts.first).toISOString().slice(0, 7), writing),
            })
      }
      actions={
        <>
          <SaveOrders filter={filter} weeks={weeks} total={data?.total ?? 0} />
          <Button kind="go" keys="N" onClick={() => goTo('today', 'book')}>
            {t('orders.book')}
          </Button>
        </>
      }
      foot={
        <p className="orders-keys">
          {FOOT.map(([keys, does]) => (
            <span key={does}>
              <kbd>{keys.map(keyName).join(' ')}</kbd> {t(`orders.does-${does}`)}
            </span>
          ))}
          {range === null || weeks.length === 0 ? null : (
            <span className="orders-range">
              {t('orders.range', { first: range.first, last: range.last, total: data?.total ?? 0 })}
            </span>
          )}
        </p>
      }
    >
      <FilterSentence
        filter={typed}
        first={counts?.first ?? null}
        onChange={(part) => setTyped({ ...typed, ...part })}
      />
      <NotSaved error={data === undefined ? error : null} />
      {counts === undefined ? null : (
        <p className="orders-just">
          {t('orders.orJust')}
          {JUST.map((one) => (
            <button
              key={one}
              type="button"
              className="link"
              aria-pressed={which === one}
              onClick={() => setTyped({ which: one, year: null, text: '' })}
            >
              {t(`orders.just-${one}`)} <span className="figure">{counts[one]}</span>
            </button>
          ))}
        </p>
      )}
      {loading ? <Loading rows={8} /> : null}
      {data !== undefined && weeks.length === 0 ? (
        <Empty>{t(text === '' ? `orders.none-${which}` : 'orders.noneHold', { text })}</Empty>
      ) : null}
      <div className="orders-body">
        <div ref={list}>
          {weeks.length === 0 ? null : (
            <p className="orders-heads" aria-hidden="true">
              {(['number', 'in', 'plate', 'who', 'what', 'sum', 'stands'] as const).map((head) => (
                <span key={head}>{t(`orders.head-${head}`)}</span>
              ))}
            </p>
          )}
          <OrderWeeks filter={filter} weeks={weeks} />
        </div>
        {months.length < 3 ? null : (
          <MonthBar
            months={months}
            at={Math.max(
              0,
              months.findIndex((month) => month.week <= (range?.week ?? Number.POSITIVE_INFINITY)),
            )}
            onGo={(month) => {
              if (list.current !== null) goToWeek(list.current, month.week);
            }}
          />
        )}
      </div>
    </Page>
  );
}
