import { useState } from 'react';
import { Button } from '../parts/Button.tsx';
import { invoiceOf, type Job, type Order } from '../sheet/order.ts';
import { Wrong } from '../sheet/Wrong.tsx';
import { useNow } from '../state/now.ts';
import { useSession } from '../state/session.ts';
import { useShop, useWriting } from '../state/shop.ts';
import { useDo } from '../state/use-do.ts';
import { quantityText, spanText } from '../words/figures.ts';
import { t } from '../words/t.ts';
import { nearText } from '../words/times.ts';
import { CorrectClock } from './CorrectClock.tsx';
import { heldWords } from './held-words.ts';

/** Clocks on a job, a column for each person who may work; held until a yes names the job. */
export function Clocks({ order, job }: { readonly order: Order; readonly job: Job }) {
  const writing = useWriting();
  const now = useNow();
  const me = useSession((session) => session.person);
  const people = useShop()?.people.filter((person) => person.active) ?? [];
  const on = useDo('clock.on');
  const off = useDo('clock.off');
  const forgotten = useDo('clock.forgotten');
  const [correcting, setCorrecting] = useState<string | null>(null);
  const mine = people.filter((person) => me?.role !== 'mechanic' || person.id === me.personId);
  const why = heldWords(order, job);
  const invoiced = invoiceOf(order) !== undefined;
  const entries = order.clocks.filter((entry) => entry.jobId === job.id);
  return (
    <section aria-label={t('bench.clocks')}>
      <h3>
        {t('bench.clocks')} <span>{t('bench.clocked', { time: spanText(job.clockedMinutes * 60_000) })}</span>
      </h3>
      {why === null || invoiced ? null : (
        <p className="small" id="clocks-held">
          <b>{t('parts.held')}</b> {why}
        </p>
      )}
      <div className="clocks">
        {mine.map((person) => {
          const running = order.openClocks.find((clock) => clock.personId === person.id);
          const here = running?.jobId === job.id ? running : undefined;
          const before = entries
            .filter((entry) => entry.personId === person.id && entry.counts && entry.off !== null)
            .reduce((sum, entry) => sum + (entry.off ?? entry.on) - entry.on, 0);
          const quoted = job.lines
            .flatMap((line) => line.people)
            .filter((one) => one.personId === person.id)
            .reduce((sum, one) => sum + one.hours, 0);
          return (
            <div className="clock" key={person.id}>
              <b>{person.name}</b>
              <span className="clock-time">{spanText(before + (here ? now - here.on : 0))}</span>
              <span className="small ink-2">
                {quoted > 0 ? t('bench.of', { hours: quantityText(quoted, 'h', writing) }) : ''}
                {running !== undefined && here === undefined ? t('bench.elsewhere') : ''}
              </span>
              {here ? (
                <>
                  <Button
                    small
                    onClick={() => void off.run({ personId: person.id })}
                    label={t('bench.stopOf', { name: person.name })}
                  >
                    {t('bench.stop')}
                  </Button>
                  <button
                    type="button"
                    className="link small"
                    onClick={() => void forgotten.run({ personId: person.id })}
                  >
                    {t('bench.forgot')}
                  </button>
                </>
              ) : why === null && !invoiced ? (
                <Button
                  small
                  onClick={() => void on.run({ jobId: job.id, personId: person.id })}
                  label={t('bench.startOf', { name: person.name, letter: job.letter })}
                >
                  {t('bench.start')}
                </Button>
              ) : null}
            </div>
          );
        })}
      </div>
      <Wrong error={on.error ?? off.error ?? forgotten.error} />
      <ul>
        {entries
          .filter((entry) => entry.forgotten && !entries.some((other) => other.corrects === entry.id))
          .map((entry) => (
            <li key={entry.id}>
              <span className="in-stop semi">
                {t('bench.forgotten', { name: entry.person, when: nearText(entry.on, writing, now) })}
              </span>{' '}
              {correcting === entry.id ? (
                <CorrectClock entry={entry} onDone={() => setCorrecting(null)} />
              ) : (
                <button type="button" className="link" onClick={() => setCorrecting(entry.id)}>
                  {t('bench.correct')}
                </button>
              )}
            </li>
          ))}
      </ul>
    </section>
  );
}
