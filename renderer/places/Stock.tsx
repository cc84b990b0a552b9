import { Page } from '../frame/Page.tsx';
import { Empty } from '../parts/Empty.tsx';
import { t } from '../words/t.ts';

/** The place Stock: not built yet, and it says so. */
export default function Stock() {
  return (
    <Page title={t('stock.title')}>
      <Empty>{t('stock.nothing')}</Empty>
    </Page>
  );
}
