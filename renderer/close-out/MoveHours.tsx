import { useState } from 'react';
import { Button } from '../parts/Button.tsx';
import { Choice } from '../parts/Choice.tsx';
import { Field } from '../parts/Field.tsx';
import { useFold, useUnfolded } from '../parts/unfolded.ts';
import type { Order } from '../sheet/order.ts';
import { Wrong } from '../sheet/Wrong.tsx';
import { useNow } from '../state/now.ts';
import { useSession } from '../state/session.ts';
import { useWriting } from '../state/shop.ts';
import { useDo } from '../state/use-do.ts';
import { quantityText, type Writing } from '../words/figures.ts';
import { t } from '../words/t.ts';
import { nearText, timeText } from '../words/times.ts';
import { hoursClocked } from './close-out.ts';

type Entry = Order['clocks'][number];

interface Props {
  readonly order: Order;
  readonly jobId: string;
}

/**
 * Hours that were clocked on one job and belonged to another are moved there, with a reason; the old entry stays. One's
 * own, or by the owner anybody's.
 */
export function MoveHours({ order, jobId }: Props) {
  const { open, unfold, fold, opener } = useFold();
  const me = useSession((session) => session.person);
  const entries = order.clocks.filter(
    (entry) =>
      (me?.role === 'owner' || entry.personId === me?.personId) &&
      entry.jobId === jobId &&
      entry.kind === 'work' &&
      entry.counts &&
      entry.off !== null,
  );
  if (order.jobs.length < 2 || entries.length === 0) return null;
  if (open) return <MoveForm order={order} jobId={jobId} entries={entries} onDone={fold} />;
  return (
    <button ref={opener} type="button" className="link small" onClick={unfold}>
      {t('closeOut.moveHours')}
    </button>
  );
}

interface FormProps extends Props {
  readonly entries: readonly Entry[];
  readonly onDone: () => void;
}

function MoveForm({ order, jobId, entries, onDone }: FormProps) {
  const writing = useWriting();
  const now = useNow(60_000);
  const correct = useDo('clock.correct');
  const form = useUnfolded<HTMLFormElement>(onDone);
  const others = order.jobs.filter((job) => job.id !== jobId);
  const [chosen, setChosen] = useState(entries.length === 1 ? (entries[0]?.id ?? null) : null);
  const [to, setTo] = useState(others.length === 1 ? (others[0]?.id ?? null) : null);
  const [why, setWhy] = useState('');
  const entry = entries.find((one) => one.id === chosen);
  const missing = entry === undefined || to === null;
  const go = async () => {
    if (missing || entry.off === null || correct.busy) return;
    const answer = await correct.run({ entryId: entry.id, on: entry.on, off: entry.off, jobId: to, why });
    if (answer.ok) onDone();
  };
  return (
    <form
      ref={form}
      className="move-hours"
      onSubmit={(event) => {
        event.preventDefault();
        void go();
      }}
    >
      <Choice
        label={t('closeOut.whichHours')}
        value={chosen}
        options={entries.map((one) => ({ value: one.id, words: entryWords(one, writing, now) }))}
        onChange={setChosen}
      />
      <Choice
        label={t('closeOut.toWhichJob')}
        value={to}
        options={others.map((job) => ({ value: job.id, words: `${job.letter} ${job.title}` }))}
        onChange={setTo}
      />
      <Field label={t('closeOut.whyMoved')} value={why} onChange={setWhy} maxLength={300} required />
      <div className="row-form">
        <Button small type="submit" disabled={correct.busy} held={missing ? t('closeOut.moveWhat') : null}>
          {t('closeOut.moveThem')}
        </Button>
        <Button small onClick={onDone}>
          {t('closeOut.leaveHours')}
        </Button>
      </div>
      <Wrong error={correct.error} />
    </form>
  );
}

function entryWords(entry: Entry, writing: Writing, now: number): string {
  const off = entry.off ?? entry.on;
  return t('closeOut.hoursOf', {
    person: entry.person,
    when: nearText(entry.on, writing, now),
    to: timeText(off, writing),
    hours: quantityText(hoursClocked(off - entry.on), 'h', writing),
  });
}
