import { Page } from '../frame/Page.tsx';
import { t } from '../words/t.ts';

/** The place Customers. */
export default function Customers() {
  return <Page title={t('customers.title')}>{null}</Page>;
}
