import { Page } from '../frame/Page.tsx';
import { hrefOf } from '../frame/router.ts';
import { useWriting } from '../state/shop.ts';
import { useAsk } from '../state/use-ask.ts';
import { errorSentence } from '../words/error-sentence.ts';
import { t } from '../words/t.ts';
import type { PlaceProps } from './index.ts';
import { BookJobPage } from './job-book/BookJobPage.tsx';
import { BookList } from './job-book/BookList.tsx';
import './job-book/job-book.css';
import './job-book/procedure.css';

/** The place Job book: the list of jobs, one of them, or a new one. */
export default function JobBook({ path }: PlaceProps) {
  const [id] = path;
  if (id === undefined) return <BookList />;
  return id === 'new' ? <BookJobPage key="new" kept={null} /> : <KeptJob key={id} id={id} />;
}

function KeptJob({ id }: { readonly id: string }) {
  const writing = useWriting();
  const { data, error } = useAsk('jobBook.get', { id });
  if (data !== undefined) return <BookJobPage kept={data} />;
  if (error === null) return null;
  return (
    <Page title={t('jobBook.title')}>
      <p role="alert">{error.code === 'not-found' ? t('jobBook.notFound') : errorSentence(error, writing)}</p>
      <p>
        <a href={hrefOf('job-book')}>{t('jobBook.title')}</a>
      </p>
    </Page>
  );
}
