import { t } from '../../words/t.ts';
import { LawNote } from './LawNote.tsx';
import { RuleHeading } from './RuleHeading.tsx';
import { SettingChoice, type Settings, useShopPage } from './setting.tsx';
import { WholeSetting } from './WholeSetting.tsx';

type Terms = NonNullable<Settings['warrantyTerms']>;

/** Only to begin with, until the owner has put their own and the day it was checked: not a rule of any country. */
const BEGIN: Terms = { months: 12, distance: 20_000, edgesIncluded: true, source: '', checkedOn: null };

const termsOf = ({ warrantyTerms }: Settings): Terms => warrantyTerms ?? BEGIN;
const change = (settings: Settings, part: Partial<Terms>) => ({ warrantyTerms: { ...termsOf(settings), ...part } });

/** How long and how far a repair is warranted; whichever ends first. */
export function Warranty() {
  const { settings } = useShopPage();
  const terms = settings.warrantyTerms;
  return (
    <section>
      <RuleHeading name={t('terms.warranty')} rule={terms} />
      <SettingChoice
        label={t('terms.warranty')}
        value={terms === null ? 'none' : 'some'}
        options={[
          { value: 'none', words: t('terms.warrantyNo') },
          { value: 'some', words: t('terms.warrantyYes') },
        ]}
        change={(mode, now) => ({ warrantyTerms: mode === 'none' ? null : termsOf(now) })}
        note={t('terms.warrantyWords')}
      />
      {terms === null ? null : (
        <>
          <WholeSetting
            label={t('terms.months')}
            least={1}
            most={120}
            show={(now) => termsOf(now).months}
            change={(months, now) => change(now, { months })}
            note={t('terms.monthsWords')}
          />
          <WholeSetting
            label={`${t('terms.distance')}, ${t(settings.distance === 'km' ? 'cars.km' : 'cars.mi')}`}
            least={1}
            most={1_000_000}
            show={(now) => termsOf(now).distance}
            change={(distance, now) => change(now, { distance })}
            note={t('terms.distanceWords')}
          />
          <SettingChoice
            label={t('terms.edges')}
            value={terms.edgesIncluded ? 'in' : 'out'}
            options={[
              { value: 'in', words: t('terms.edgesIn') },
              { value: 'out', words: t('terms.edgesOut') },
            ]}
            change={(edge, now) => change(now, { edgesIncluded: edge === 'in' })}
            note={t('terms.edgesWords')}
          />
          <LawNote of={termsOf} change={change} />
        </>
      )}
    </section>
  );
}
