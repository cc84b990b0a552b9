import { memo, useLayoutEffect } from 'react';
import type { OutputOf, ParsedInputOf } from '../../../core/contract/index.ts';
import { civilDateOf } from '../../../core/time/instant.ts';
import { NotSaved } from '../../parts/Notice.tsx';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { t } from '../../words/t.ts';
import { weekdayText } from '../../words/times.ts';
import { byDay } from './by-day.ts';
import { OrderRow } from './OrderRow.tsx';

export type OrderFilter = ParsedInputOf<'order.weeks'>['filter'];
export type Week = OutputOf<'order.weeks'>['weeks'][number];

interface Props {
  readonly filter: OrderFilter;
  readonly week: Week;
  readonly before?: { readonly at: number; readonly id: string };
  /** Called when it stands. */
  readonly onMade: () => void;
}

/** The orders of one week, parted by day; where they are many, a page after another. */
export const OrderWeek = memo(function OrderWeek({ filter, week, before, onMade }: Props) {
  const writing = useWriting();
  const { from, to } = week;
  const { data, error } = useAsk('order.page', { filter, from, to, ...(before === undefined ? {} : { before }) });
  useLayoutEffect(() => {
    if (data !== undefined) onMade();
  }, [data, onMade]);
  if (data === undefined) return <NotSaved error={error} />;
  return (
    <>
      {byDay(data.rows, writing.zone).map(({ day, rows }) => (
        <section key={day} className="orders-day" aria-label={dayWords(day, writing)}>
          <header>
            <h2>{dayWords(day, writing)}</h2>
            <p>{t('orders.count', { n: rows.length })}</p>
          </header>
          <ul>
            {rows.map((row) => (
              <OrderRow key={row.id} row={row} />
            ))}
          </ul>
        </section>
      ))}
      {data.next === null ? null : <OrderWeek filter={filter} week={week} before={data.next} onMade={onMade} />}
    </>
  );
});

function dayWords(day: string, writing: ReturnType<typeof useWriting>): string {
  const words = weekdayText(Date.parse(`${day}T12:00Z`), { ...writing, zone: 'UTC' });
  return day.slice(0, 4) === civilDateOf(Date.now(), writing.zone).slice(0, 4) ? words : `${words} ${day.slice(0, 4)}`;
}
