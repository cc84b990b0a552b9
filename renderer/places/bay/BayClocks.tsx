import { Button } from '../../parts/Button.tsx';
import type { Job, Order } from '../../sheet/order.ts';
import { useNow } from '../../state/now.ts';
import { useSession } from '../../state/session.ts';
import { useShop, useWriting } from '../../state/shop.ts';
import { tap, tapsOf, useTaps, type WaitingTap } from '../../state/taps.ts';
import { quantityText, spanText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';

/** Since when somebody's clock runs on a job; null where it does not. What waits for the shop counts as done. */
export function runsSince(order: Order, job: Job, personId: string, taps: readonly WaitingTap[]): number | null {
  const waiting = [...tapsOf(taps, 'clock.on'), ...tapsOf(taps, 'clock.off')]
    .filter(({ input, personId: by }) => (input.personId ?? by) === personId)
    .sort((a, b) => a.place - b.place)
    .at(-1);
  if (waiting?.operation === 'clock.off') return null;
  if (waiting !== undefined && 'jobId' in waiting.input) return waiting.input.jobId === job.id ? waiting.at : null;
  const open = order.openClocks.find((clock) => clock.personId === personId && clock.jobId === job.id);
  return open?.on ?? null;
}

interface Props {
  readonly order: Order;
  readonly job: Job;
  readonly held: string | null;
}

/** The clocks on the job in hand: one's own, and those of whoever is quoted for it or works on it. */
export function BayClocks({ order, job, held }: Props) {
  const writing = useWriting();
  const now = useNow();
  const taps = useTaps((state) => state.taps);
  const me = useSession((session) => session.person);
  const people = (useShop()?.people ?? []).filter((person) => person.active);
  const quotedOf = (personId: string) =>
    job.lines
      .flatMap((line) => line.people)
      .filter((one) => one.personId === personId)
      .reduce((sum, one) => sum + one.hours, 0);
  const clocked = order.clocks.filter((entry) => entry.jobId === job.id && entry.counts && entry.off !== null);
  const shown = people
    .filter(
      ({ id }) =>
        id === me?.personId ||
        quotedOf(id) > 0 ||
        runsSince(order, job, id, taps) !== null ||
        clocked.some((entry) => entry.personId === id),
    )
    .sort((a, b) => Number(b.id === me?.personId) - Number(a.id === me?.personId))
    .slice(0, 4);
  return (
    <section className="bay-clocks" aria-label={t('bench.clocks')}>
      {shown.map((person) => {
        const since = runsSince(order, job, person.id, taps);
        const before = clocked
          .filter((entry) => entry.personId === person.id)
          .reduce((sum, entry) => sum + (entry.off ?? entry.on) - entry.on, 0);
        const quoted = quotedOf(person.id);
        const mayTouch = me?.role !== 'mechanic' || person.id === me.personId;
        const elsewhere =
          since === null && order.openClocks.some((clock) => clock.personId === person.id && clock.jobId !== job.id);
        return (
          <div key={person.id} className={since === null ? 'bay-clock' : 'bay-clock runs'}>
            <div>
              <b>{person.name}</b>
              <span className="bay-time">{spanText(before + (since === null ? 0 : now - since))}</span>
              <span className="bay-of">
                {quoted > 0 ? t('bench.ofQuoted', { hours: quantityText(quoted, 'h', writing) }) : ''}
                {elsewhere ? t('bench.elsewhere') : ''}
              </span>
            </div>
            {!mayTouch ? null : since !== null ? (
              <Button
                label={t('bench.stopOf', { name: person.name })}
                onClick={() => void tap('clock.off', { personId: person.id })}
              >
                {t('bench.stop')}
              </Button>
            ) : held === null ? (
              <Button
                label={t('bench.startOf', { name: person.name, letter: job.letter })}
                onClick={() => void tap('clock.on', { jobId: job.id, personId: person.id })}
              >
                {t('bench.start')}
              </Button>
            ) : null}
          </div>
        );
      })}
    </section>
  );
}
