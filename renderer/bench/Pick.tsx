import { Button } from '../parts/Button.tsx';
import type { Job, Order } from '../sheet/order.ts';
import { Wrong } from '../sheet/Wrong.tsx';
import { useWriting } from '../state/shop.ts';
import { useAsk } from '../state/use-ask.ts';
import { useDo } from '../state/use-do.ts';
import { quantityText } from '../words/figures.ts';
import { t } from '../words/t.ts';
import { civilText } from '../words/times.ts';

/** Parts of a job: taken from the shelf onto its line, or awaited from outside. */
export function Pick({ order, job }: { readonly order: Order; readonly job: Job }) {
  const writing = useWriting();
  const issue = useDo('part.issue');
  const stock = useAsk('part.list', {}).data?.rows ?? [];
  const lines = job.lines.filter((line) => line.kind === 'part' || line.kind === 'fluid');
  if (lines.length === 0) return null;
  return (
    <section aria-label={t('bench.pick')}>
      <h3>{t('bench.pick')}</h3>
      <ul>
        {lines.map((line) => {
          const part = stock.find(
            (one) => one.id === line.partId || (line.partNumber !== '' && one.number === line.partNumber),
          );
          const issued = order.moves
            .filter((move) => move.lineId === line.id)
            .reduce((sum, move) => sum - move.quantity, 0);
          const awaited = order.awaited.find((one) => one.lineId === line.id && one.arrivedAt === null);
          const left = line.quantity - issued;
          return (
            <li className="pick-row" key={line.id}>
              <span>{line.words}</span>
              <span className="figure">{quantityText(line.quantity, line.unit, writing)}</span>
              <b className="figure">{part?.bin ?? ''}</b>
              {awaited !== undefined ? (
                <span className="in-heed semi">
                  {awaited.dueOn === null
                    ? awaited.supplier
                    : t('bench.due', { day: civilText(awaited.dueOn, writing) })}
                </span>
              ) : part === undefined ? (
                <span className="ink-2">{t('bench.notStocked')}</span>
              ) : left <= 0 ? (
                <span>{t('bench.taken')}</span>
              ) : (
                <Button
                  small
                  held={job.covered ? null : t('bench.noYes')}
                  label={t('bench.takeOf', { words: line.words })}
                  onClick={() => void issue.run({ jobId: job.id, lineId: line.id, partId: part.id, quantity: left })}
                >
                  {t('bench.take')}
                </Button>
              )}
            </li>
          );
        })}
      </ul>
      <Wrong error={issue.error} />
    </section>
  );
}
