import { Page } from '../frame/Page.tsx';
import { t } from '../words/t.ts';

/** The place Cars. */
export default function Cars() {
  return <Page title={t('cars.title')}>{null}</Page>;
}
