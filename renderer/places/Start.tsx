import { Page } from '../frame/Page.tsx';
import { t } from '../words/t.ts';

/** The place Start. */
export default function Start() {
  return <Page title={t('start.title')}>{null}</Page>;
}
