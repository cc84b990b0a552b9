import { t } from '../words/t.ts';
import { Comeback } from './Comeback.tsx';
import { HeadMore } from './edit/HeadMore.tsx';
import { Found } from './Found.tsx';
import { JobPart } from './JobPart.tsx';
import { Margin } from './Margin.tsx';
import { NewJob } from './NewJob.tsx';
import { invoiceOf, type Job, type Order, standsAside } from './order.ts';
import { SheetHead } from './SheetHead.tsx';
import { Sums } from './Sums.tsx';
import { TakenOut, UndoKey } from './TakenOut.tsx';

interface Props {
  readonly order: Order;
  /** Read only: invoiced, or looked at from the bench. */
  readonly locked: boolean;
  readonly current: string | undefined;
  readonly onCurrent: (jobId: string) => void;
}

/** The order as paper: head, car, what is said and found, jobs with their lines, sums, and the yeses in the margin. */
export function Sheet({ order, locked, current, onCurrent }: Props) {
  const aside = order.jobs.filter(standsAside);
  const part = (job: Job) => (
    <JobPart
      key={job.id}
      order={order}
      job={job}
      locked={locked}
      current={job.id === current}
      onCurrent={() => onCurrent(job.id)}
    />
  );
  return (
    <div className="order-sheet">
      <SheetHead order={order} />
      {locked ? null : <HeadMore order={order} />}
      <div className="sheet-body">
        <div className="sheet-column">
          <NotReleased order={order} />
          <Found order={order} locked={invoiceOf(order) !== undefined} headLocked={locked} />
          {order.jobs.filter((job) => !standsAside(job)).map(part)}
          {locked ? null : <TakenOut at="sheet" />}
          {locked ? null : <UndoKey />}
          {locked ? null : <NewJob orderId={order.id} />}
          {locked ? null : <Comeback orderId={order.id} />}
          <Sums order={order} locked={locked} />
          {aside.length === 0 ? null : <h2 className="offered-head">{t('sheet.aside')}</h2>}
          {aside.map(part)}
        </div>
        <Margin order={order} />
      </div>
    </div>
  );
}

/** What is marked not to be released, above all else of the sheet. */
function NotReleased({ order }: { readonly order: Order }) {
  return order.stops
    .filter((stop) => stop.what === 'quarantine')
    .map(({ with: { words = '' } }) => (
      <p key={words} className="in-stop semi">
        {t('held.quarantine', { words })}
      </p>
    ));
}
