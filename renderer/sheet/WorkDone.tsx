import { HoursBar, type HoursRow } from '../parts/HoursBar.tsx';
import { useWriting } from '../state/shop.ts';
import { amountText, quantityText } from '../words/figures.ts';
import { t } from '../words/t.ts';
import type { Job, Order } from './order.ts';

const MS_PER_THOUSANDTH_HOUR = 3600;

/** Thousandths of an hour that each person has on a job: in its lines, and on the clock. */
export function hoursOf(order: Order, job: Job): HoursRow[] {
  const rows = new Map<string, { person: string; quoted: number; clocked: number }>();
  const row = (id: string, person: string) => {
    const found = rows.get(id) ?? { person, quoted: 0, clocked: 0 };
    rows.set(id, found);
    return found;
  };
  const clocks = order.clocks.filter((entry) => entry.jobId === job.id && entry.kind === 'work' && entry.counts);
  for (const entry of clocks)
    if (entry.off !== null)
      row(entry.personId, entry.person).clocked += Math.round((entry.off - entry.on) / MS_PER_THOUSANDTH_HOUR);
  for (const { personId, hours } of job.lines.flatMap((line) => line.people)) {
    const known = rows.get(personId);
    if (known !== undefined) known.quoted += hours;
  }
  // Hours of a job without names are meant for whoever does it, if that is one person.
  const only = rows.size === 1 ? [...rows.values()][0] : undefined;
  if (only !== undefined && only.quoted === 0)
    only.quoted = job.lines.filter((line) => line.kind === 'labour').reduce((sum, line) => sum + line.charged, 0);
  return [...rows.values()];
}

/** The sheet against work done: hours on the clock, and what was taken from stock for each line. */
export function WorkDone({ order }: { readonly order: Order }) {
  const writing = useWriting();
  const clocked = order.jobs.map((job) => ({ job, rows: hoursOf(order, job) })).filter(({ rows }) => rows.length > 0);
  const taken = (lineId: string) =>
    order.moves.filter((move) => move.lineId === lineId).reduce((sum, move) => sum - move.quantity, 0);
  return (
    <>
      {clocked.length === 0 ? null : (
        <section>
          <h3>{t('decision.hours')}</h3>
          {clocked.map(({ job, rows }) => (
            <div key={job.id}>
              <h4>{t('sheet.jobLabel', { letter: job.letter, title: job.title })}</h4>
              <HoursBar rows={rows} quotedWords={t('decision.quoted')} clockedWords={t('decision.clocked')} />
            </div>
          ))}
        </section>
      )}
      <section>
        <h3>{t('decision.lines')}</h3>
        <table className="close-lines">
          <thead>
            <tr>
              <th>{t('sheet.cellWords')}</th>
              <th className="figure">{t('decision.taken')}</th>
              <th className="figure">{t('decision.onSheet')}</th>
              <th className="figure">{t('decision.toCharge')}</th>
            </tr>
          </thead>
          <tbody>
            {order.jobs.flatMap((job) =>
              job.lines.map((line) => {
                const used = taken(line.id);
                return (
                  <tr key={line.id}>
                    <td>
                      <b>{job.letter}</b> {line.words}
                    </td>
                    <td className={used > line.charged ? 'figure in-heed semi' : 'figure'}>
                      {used === 0 ? '' : quantityText(used, line.unit, writing)}
                    </td>
                    <td className="figure">{quantityText(line.charged, line.unit, writing)}</td>
                    <td className="figure">{amountText(line.amount, writing)}</td>
                  </tr>
                );
              }),
            )}
          </tbody>
        </table>
      </section>
    </>
  );
}
