import type { OutputOf } from '../../../core/contract/index.ts';
import { useShop, useWriting } from '../../state/shop.ts';
import { amountText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';

type Unpaid = OutputOf<'money.get'>['unpaid'];
export type UnpaidRow = Unpaid[number];

/** Past due by more than this is late in earnest. Common practice, no source. */
const LONG = 30;

/** How a row stands: nothing said, past its day, long past it. */
export const standing = (row: UnpaidRow): 'open' | 'heed' | 'stop' =>
  row.daysPastDue <= 0 ? 'open' : row.daysPastDue <= LONG ? 'heed' : 'stop';

/** The least room between the middles of two labels, in percent of the width. */
const ROOM = 15;

/** The largest first; a label is left out where a larger one stands: the list names them all. */
function labelled(rows: Unpaid, left: (row: UnpaidRow) => number): ReadonlySet<string> {
  const placed: UnpaidRow[] = [];
  for (const row of [...rows].sort((a, b) => b.open - a.open))
    if (placed.every((other) => Math.abs(left(other) - left(row)) >= ROOM)) placed.push(row);
  return new Set(placed.map((row) => row.paperId));
}

/** Unpaid invoices as sticks on days since the invoice, as high as the sum, with the shop's day of payment drawn. */
export function Sticks({ rows }: { readonly rows: Unpaid }) {
  const writing = useWriting();
  const payDays = useShop()?.settings?.payDays ?? 0;
  const oldest = Math.max(30, payDays + 10, ...rows.map((row) => row.age));
  const step = [15, 30, 90, 180].find((days) => oldest / days <= 6) ?? 365;
  const end = Math.ceil((oldest + 1) / step) * step;
  const most = Math.max(1, ...rows.map((row) => row.open));
  const left = (days: number) => (days * 100) / end;
  const marks = Array.from({ length: end / step }, (_, i) => (i + 1) * step).filter(
    (day) => Math.abs(left(day) - left(payDays)) > 9 && day < end,
  );
  // A label stands left of its stick where it would run out of the page or across the day of payment.
  const atRight = (age: number) =>
    left(age) > 80 || (age <= payDays && left(age) > ROOM && left(payDays) - left(age) < ROOM);
  const named = labelled(rows, (row) => left(row.age));
  const beside = (row: UnpaidRow) =>
    rows.filter((other) => other.age === row.age).findIndex((other) => other.paperId === row.paperId);
  return (
    <div className="sticks" role="img" aria-label={t('money.chart')}>
      <div className="sticks-field">
        {payDays > 0 ? <i className="sticks-due" style={{ width: `${left(payDays)}%` }} /> : null}
        <div className="sticks-room">
          {rows.map((row) => (
            <div
              key={row.paperId}
              className={`stick ${standing(row)}`}
              style={{
                left: `calc(${left(row.age).toFixed(2)}% + ${beside(row) * 14}px)`,
                height: `${((row.open * 100) / most).toFixed(2)}%`,
              }}
            >
              {named.has(row.paperId) ? (
                <span className={atRight(row.age) ? 'stick-label at-right' : 'stick-label'}>
                  <b>{row.customer}</b>
                  {amountText(row.open, writing)}
                </span>
              ) : null}
            </div>
          ))}
        </div>
      </div>
      <div className="sticks-axis">
        <span style={{ left: 0 }}>{t('money.today')}</span>
        {marks.map((day) => (
          <span key={day} style={{ left: `${left(day)}%` }}>
            {day}
          </span>
        ))}
        {payDays > 0 ? <span style={{ left: `${left(payDays)}%` }}>{t('money.dueAfter', { n: payDays })}</span> : null}
      </div>
    </div>
  );
}
