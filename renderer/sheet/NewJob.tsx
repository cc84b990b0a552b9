import { useRef, useState } from 'react';
import { useKey } from '../frame/keys.ts';
import { useAsk } from '../state/use-ask.ts';
import { useDo } from '../state/use-do.ts';
import { t } from '../words/t.ts';
import { Wrong } from './Wrong.tsx';

/** A new job on the sheet: its title typed, or one of the job book with its lines and steps. */
export function NewJob({ orderId }: { readonly orderId: string }) {
  const field = useRef<HTMLInputElement>(null);
  const [title, setTitle] = useState('');
  const add = useDo('job.add');
  const fromBook = useDo('job.fromBook');
  const book = useAsk('jobBook.list', {}).data?.rows ?? [];
  useKey('Alt+J', () => field.current?.focus());
  const go = async () => {
    if (title.trim() === '') return;
    const known = book.find((row) => row.title === title.trim());
    const answer = known
      ? await fromBook.run({ orderId, bookJobId: known.id })
      : await add.run({ orderId, job: { title } });
    if (answer.ok) setTitle('');
  };
  return (
    <form
      className="new-job"
      onSubmit={(event) => {
        event.preventDefault();
        void go();
      }}
    >
      <input
        ref={field}
        list="job-book-titles"
        value={title}
        aria-label={t('sheet.newJob')}
        placeholder={t('sheet.newJobHint')}
        onChange={(event) => setTitle(event.target.value)}
      />
      <datalist id="job-book-titles">
        {book.map((row) => (
          <option key={row.id} value={row.title}>
            {row.car}
          </option>
        ))}
      </datalist>
      <button type="submit" className="b" disabled={add.busy || fromBook.busy}>
        {t('sheet.addJob')}
      </button>
      <Wrong error={add.error ?? fromBook.error} />
    </form>
  );
}
