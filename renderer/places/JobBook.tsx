import { Page } from '../frame/Page.tsx';
import { t } from '../words/t.ts';

/** The place JobBook. */
export default function JobBook() {
  return <Page title={t('jobBook.title')}>{null}</Page>;
}
