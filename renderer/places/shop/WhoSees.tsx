import { t } from '../../words/t.ts';
import { SettingChoice, useShopPage } from './setting.tsx';

const SEES = ['mechanicPrices', 'deskCost', 'mechanicCost'] as const;

/** Who beside the owner sees prices and cost. */
export function WhoSees() {
  const { settings } = useShopPage();
  return (
    <section>
      <h3>{t('rules.sees')}</h3>
      <p className="small ink-2">{t('rules.seesWords')}</p>
      {SEES.map((which) => (
        <SettingChoice
          key={which}
          label={t(`rules.sees-${which}`)}
          value={settings.sees[which] ? 'yes' : 'no'}
          options={[
            { value: 'no', words: t('rules.seeNot') },
            { value: 'yes', words: t('rules.see') },
          ]}
          change={(sees, now) => ({ sees: { ...now.sees, [which]: sees === 'yes' } })}
          note={t(`rules.sees-${which}-note`)}
        />
      ))}
    </section>
  );
}
