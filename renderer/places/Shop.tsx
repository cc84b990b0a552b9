import { Page } from '../frame/Page.tsx';
import { t } from '../words/t.ts';

/** The place Shop. */
export default function Shop() {
  return <Page title={t('shop.title')}>{null}</Page>;
}
