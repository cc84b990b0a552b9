import { useState } from 'react';
import { parseQuantity } from '../../core/measure/quantity.ts';
import { Field } from '../parts/Field.tsx';
import { SmallForm } from '../parts/SmallForm.tsx';
import type { Order } from '../sheet/order.ts';
import { Wrong } from '../sheet/Wrong.tsx';
import { useWriting } from '../state/shop.ts';
import { useDo } from '../state/use-do.ts';
import { t } from '../words/t.ts';
import { unreadWords } from '../words/unread.ts';

interface Props {
  readonly entry: Order['clocks'][number];
  readonly onDone: () => void;
}

const MS_PER_THOUSANDTH_HOUR = 3600;

/** Puts a forgotten clock right: how many hours it really was, and why. The old entry stays. */
export function CorrectClock({ entry, onDone }: Props) {
  const writing = useWriting();
  const [hours, setHours] = useState('');
  const [why, setWhy] = useState('');
  const [unread, setUnread] = useState<string | null>(null);
  const correct = useDo('clock.correct');
  const go = async () => {
    const worked = parseQuantity(hours, writing);
    if (worked === null || worked < 0)
      return setUnread(unreadWords(hours, writing, t('sheet.unread', { label: t('bench.hoursWorked') })));
    setUnread(null);
    const answer = await correct.run({
      entryId: entry.id,
      on: entry.on,
      off: entry.on + worked * MS_PER_THOUSANDTH_HOUR,
      jobId: entry.jobId,
      why,
    });
    if (answer.ok) onDone();
  };
  return (
    <SmallForm verb={t('bench.correct')} onSend={go} busy={correct.busy} wrong={<Wrong error={correct.error} />}>
      <Field label={t('bench.hoursWorked')} value={hours} onChange={setHours} figure error={unread} autoFocus />
      <Field label={t('bench.why')} value={why} onChange={setWhy} />
    </SmallForm>
  );
}
