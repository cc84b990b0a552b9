import { Page } from '../frame/Page.tsx';
import { t } from '../words/t.ts';

/** The place Orders. */
export default function Orders() {
  return <Page title={t('orders.title')}>{null}</Page>;
}
