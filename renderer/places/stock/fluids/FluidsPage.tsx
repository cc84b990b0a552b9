import { Page } from '../../../frame/Page.tsx';
import { goTo } from '../../../frame/router.ts';
import { Button } from '../../../parts/Button.tsx';
import { t } from '../../../words/t.ts';
import { Talk } from '../../book-in/Talk.tsx';
import { Pumps } from './Pumps.tsx';
import { UsedOil } from './UsedOil.tsx';
import './fluids.css';

/** The shop's pumps with what a stroke gives, and the log of used oil. */
export function FluidsPage() {
  return (
    <Page
      title={t('fluids.title')}
      words={t('fluids.words')}
      actions={<Button onClick={() => goTo('stock')}>{t('fluids.back')}</Button>}
    >
      <Talk head={t('fluids.pumps')} words={t('fluids.pumpsWords')}>
        <Pumps />
      </Talk>
      <Talk head={t('fluids.used')} words={t('fluids.usedWords')}>
        <UsedOil />
      </Talk>
    </Page>
  );
}
