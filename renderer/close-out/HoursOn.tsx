import { HoursBar } from '../parts/HoursBar.tsx';
import type { Order } from '../sheet/order.ts';
import { useWriting } from '../state/shop.ts';
import { quantityText } from '../words/figures.ts';
import { t } from '../words/t.ts';
import { type CloseOutJob, hoursClocked, hoursShown } from './close-out.ts';
import { MoveHours } from './MoveHours.tsx';

/** Hours of a job, drawn for each mechanic with a tick at the quote, and in one sentence. */
export function HoursOn({ order, job }: { readonly order: Order; readonly job: CloseOutJob }) {
  const writing = useWriting();
  const { hours, letter } = job;
  if (hours.people.length === 0) return null;
  const text = (thousandths: number) => quantityText(hoursShown(thousandths), 'h', writing);
  const figure = (thousandths: number) => quantityText(hoursShown(thousandths), '', writing);
  const over = hours.quoted === null ? 0 : hours.clocked - hours.quoted;
  const charged = text(hours.charged);
  return (
    <section className="hours-on" aria-label={t('closeOut.hoursOn', { letter })}>
      <h2>{t('closeOut.hoursOn', { letter })}</h2>
      <HoursBar
        rows={hours.people.map((one) => ({
          key: one.personId,
          person: one.name,
          quoted: one.quoted,
          clocked: hoursClocked(one.clocked),
        }))}
        quotedWords={t('closeOut.quoted')}
        clockedWords={t('closeOut.clocked')}
      />
      <p className="hours-sum">
        <span>
          {hours.quoted === null
            ? t('closeOut.hoursUnquoted', { charged })
            : hoursShown(over) > 0
              ? t('closeOut.hoursOver', { over: text(over), charged })
              : t('closeOut.hoursInside', { charged })}
        </span>
        <b className="figure">{hours.quoted === null ? '' : figure(hours.quoted)}</b>
        <b className="figure">{figure(hours.clocked)}</b>
      </p>
      <MoveHours order={order} jobId={job.id} />
    </section>
  );
}
