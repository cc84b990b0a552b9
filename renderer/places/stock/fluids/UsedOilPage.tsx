import { Page } from '../../../frame/Page.tsx';
import { goTo, hrefOf } from '../../../frame/router.ts';
import { Button } from '../../../parts/Button.tsx';
import { t } from '../../../words/t.ts';
import { UsedOil } from './UsedOil.tsx';
import './fluids.css';

/** The log of used oil; the pumps that it is measured with stand in Shop. */
export function UsedOilPage() {
  return (
    <Page
      title={t('fluids.title')}
      words={
        <>
          {t('fluids.words')} <a href={hrefOf('shop', 'pumps')}>{t('fluids.pumps')}</a>
        </>
      }
      actions={<Button onClick={() => goTo('stock')}>{t('fluids.back')}</Button>}
    >
      <UsedOil />
    </Page>
  );
}
