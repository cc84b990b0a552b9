import { t } from '../../words/t.ts';
import { SettingChoice, useShopPage } from './setting.tsx';

const SEES = ['mechanicPrices', 'deskCost', 'mechanicCost'] as const;

/** Who beside the owner sees prices and cost. */
export function WhoSees() {
  const { settings } = useShopPage();
  return (
    <section>
      <h3>{t('own.sees')}</h3>
      <p className="small ink-2">{t('own.seesWords')}</p>
      {SEES.map((which) => (
        <SettingChoice
          key={which}
          label={t(`own.sees-${which}`)}
          value={settings.sees[which] ? 'yes' : 'no'}
          options={[
            { value: 'no', words: t('own.seeNot') },
            { value: 'yes', words: t('own.see') },
          ]}
          change={(sees, now) => ({ sees: { ...now.sees, [which]: sees === 'yes' } })}
          note={t(`own.sees-${which}-note`)}
        />
      ))}
    </section>
  );
}
