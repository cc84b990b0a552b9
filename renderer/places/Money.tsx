import { Page } from '../frame/Page.tsx';
import { Empty } from '../parts/Empty.tsx';
import { t } from '../words/t.ts';

/** The place Money: not built yet, and it says so. */
export default function Money() {
  return (
    <Page title={t('money.title')}>
      <Empty>{t('money.nothing')}</Empty>
    </Page>
  );
}
