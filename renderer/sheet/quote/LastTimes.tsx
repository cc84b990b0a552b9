import { LastTimes as BookLastTimes } from '../../places/job-book/LastTimes.tsx';
import { useAsk } from '../../state/use-ask.ts';
import type { Job } from '../order.ts';
import '../../places/job-book/job-book.css';

/** What a job that came from the book took last times; nothing where it was typed. */
export function LastTimes({ job }: { readonly job: Job }) {
  const version = useAsk('jobBook.version', job.bookVersionId === null ? null : { versionId: job.bookVersionId }).data;
  const book = useAsk('jobBook.get', version === undefined ? null : { id: version.bookJobId }).data;
  return book === undefined ? null : <BookLastTimes last={book.lastTimes} bookHours={book.content.bookHours} />;
}
