import { useState } from 'react';
import { useAsk } from '../../state/use-ask.ts';
import { t } from '../../words/t.ts';
import { LastTimes } from '../job-book/LastTimes.tsx';
import '../job-book/job-book.css';

/** What a good mechanic knows of the job: its hours last times, what was really used, what else was found. */
export function LastTimesHere({ bookJobId }: { readonly bookJobId: string }) {
  const [open, setOpen] = useState(false);
  const job = useAsk('jobBook.get', open ? { id: bookJobId } : null).data;
  return (
    <details className="last-here" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{t('bay.lastTimes')}</summary>
      {job === undefined ? null : <LastTimes last={job.lastTimes} bookHours={job.content.bookHours} />}
    </details>
  );
}
