import type { Order } from '../sheet/order.ts';
import { invoiceOf } from '../sheet/order.ts';
import { useWriting } from '../state/shop.ts';
import { useAsk } from '../state/use-ask.ts';
import { wholeText } from '../words/figures.ts';
import { t } from '../words/t.ts';
import { MarkQuarantine, StandingQuarantine } from './Quarantine.tsx';
import { TestDrive } from './TestDrive.tsx';

/** What stands between this car and the road: what must not go, who drove it, which lists are wanted, what came back. */
export function BeforeItGoes({ order }: { readonly order: Order }) {
  const writing = useWriting();
  const { data } = useAsk('release.get', { orderId: order.id });
  if (data === undefined) return null;
  const gone = order.handedOverAt !== null;
  const { quarantines, drives, finalChecks, comebacks } = data;
  if (gone && quarantines.length + drives.length + finalChecks.length + comebacks.length === 0) return null;
  return (
    <section aria-label={t('release.title')}>
      <h3>{t('release.title')}</h3>
      {quarantines.map((row) => (
        <StandingQuarantine key={row.id} row={row} />
      ))}
      <ul>
        {comebacks.map((row) => (
          <li key={row.jobId}>
            {t('release.again', { letter: row.letter, title: row.firstTitle, number: row.firstOrderNumber })}
          </li>
        ))}
        {drives.map((row) => (
          <li key={row.id}>
            {t('release.driven', {
              by: row.by,
              purpose: t(`release.purpose-${row.purpose}`),
              out: wholeText(row.out, writing),
              in: wholeText(row.in, writing),
              unit: order.car.unit,
              outcome: row.words === '' ? t(`release.outcome-${row.outcome}`) : row.words,
            })}
          </li>
        ))}
        {finalChecks.map(({ jobId, letter, title, done }) => (
          <li key={jobId} className={done === null ? 'in-heed semi' : ''}>
            {done === null
              ? t('release.listOpen', { letter, title })
              : t('release.listDone', { letter, title, by: done.by })}
          </li>
        ))}
      </ul>
      {gone ? null : (
        <>
          {order.arrivedAt === null || invoiceOf(order) !== undefined ? null : (
            <p>
              <TestDrive order={order} />
            </p>
          )}
          <MarkQuarantine orderId={order.id} />
        </>
      )}
    </section>
  );
}
