import { Empty } from '../parts/Empty.tsx';
import { Margin } from '../sheet/Margin.tsx';
import type { Order } from '../sheet/order.ts';
import { SheetHead } from '../sheet/SheetHead.tsx';
import { Sums } from '../sheet/Sums.tsx';
import { UndoKey } from '../sheet/TakenOut.tsx';
import { useWriting } from '../state/shop.ts';
import { amountText } from '../words/figures.ts';
import { t } from '../words/t.ts';
import { ClosingJob } from './ClosingJob.tsx';
import type { CloseOut } from './close-out.ts';
import { HoursOn } from './HoursOn.tsx';

interface Props {
  readonly order: Order;
  readonly closeOut: CloseOut;
}

/** The same paper, with other columns: what was quoted, what was used, what is charged. */
export function CloseOutSheet({ order, closeOut }: Props) {
  return (
    <div className="order-sheet close-out">
      <SheetHead order={order} title={t('closeOut.title')} under={t('closeOut.under')} />
      <div className="sheet-body">
        <div className="sheet-column">
          {closeOut.jobs.map((job) => (
            <HoursOn key={job.id} order={order} job={job} />
          ))}
          {closeOut.jobs.length === 0 ? (
            <Empty>{t('closeOut.empty')}</Empty>
          ) : (
            <ClosingTable order={order} closeOut={closeOut} />
          )}
          <UndoKey />
          <AgainstTheQuote totals={closeOut.totals} />
          <Sums order={order} locked />
          <ToPay totals={closeOut.totals} />
        </div>
        <Margin order={order} />
      </div>
    </div>
  );
}

/** Every job with its lines, under the heads of the columns. */
function ClosingTable({ order, closeOut }: Props) {
  return (
    <table className="closing">
      <thead>
        <tr className="closing-heads">
          <th scope="col">
            <span className="aloud">{t('sheet.cellWords')}</span>
          </th>
          <th scope="col" className="figure">
            {t('closeOut.quoted')}
          </th>
          <th scope="col" className="figure">
            {t('closeOut.used')}
          </th>
          <th scope="col" className="figure">
            {t('closeOut.toCharge')}
          </th>
        </tr>
      </thead>
      {closeOut.jobs.map((job) => (
        <ClosingJob key={job.id} order={order} job={job} quoted={closeOut.quote !== null} />
      ))}
    </table>
  );
}

/** How far the sheet has gone from its quote. */
function AgainstTheQuote({ totals }: Pick<CloseOut, 'totals'>) {
  const writing = useWriting();
  if (totals === null) return null;
  if (totals.quoted === null) return <p className="against-quote">{t('closeOut.neverQuoted')}</p>;
  const more = totals.charge - totals.quoted;
  const sum = amountText(Math.abs(more), writing);
  return (
    <p className="against-quote">
      {t('closeOut.quotedSum', { sum: amountText(totals.quoted, writing) })}
      {'. '}
      <span className={more > 0 ? 'semi' : ''}>
        {more > 0
          ? t('closeOut.sheetHigher', { sum })
          : more < 0
            ? t('closeOut.sheetLower', { sum })
            : t('closeOut.sheetSame')}
      </span>
    </p>
  );
}

/** What was taken already, and what is left to pay or to give back. */
function ToPay({ totals }: Pick<CloseOut, 'totals'>) {
  const writing = useWriting();
  if (totals === null || totals.taken === 0) return null;
  return (
    <div className="sum to-pay">
      <span />
      <dl>
        <dt>{t('closeOut.taken')}</dt>
        <dd>{amountText(-totals.taken, writing)}</dd>
        <dt className="total">{t(totals.toPay < 0 ? 'closeOut.toGiveBack' : 'closeOut.toPay')}</dt>
        <dd className="total">{amountText(Math.abs(totals.toPay), writing)}</dd>
      </dl>
    </div>
  );
}
