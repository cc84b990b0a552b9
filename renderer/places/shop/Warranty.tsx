import { WordMark } from '../../parts/WordMark.tsx';
import { t } from '../../words/t.ts';
import { LawNote } from './LawNote.tsx';
import { readWhole } from './read-whole.ts';
import { Setting, SettingChoice, type Settings, useShopPage } from './setting.tsx';

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
      <h3>
        {t('terms.warranty')}{' '}
        {terms !== null && terms.checkedOn === null ? <WordMark kind="heed">{t('shop.notChecked')}</WordMark> : null}
      </h3>
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
          <Setting
            label={t('terms.months')}
            show={(now) => String(termsOf(now).months)}
            read={(text, now) => {
              const months = readWhole(text, 1, 120);
              return months === null ? null : change(now, { months });
            }}
            wrong={t('shop.wholeWrong', { least: 1, most: 120 })}
            note={t('terms.monthsWords')}
          />
          <Setting
            label={`${t('terms.distance')}, ${t(settings.distance === 'km' ? 'cars.km' : 'cars.mi')}`}
            show={(now) => String(termsOf(now).distance)}
            read={(text, now) => {
              const distance = readWhole(text, 1, 1_000_000);
              return distance === null ? null : change(now, { distance });
            }}
            wrong={t('shop.wholeWrong', { least: 1, most: 1_000_000 })}
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
