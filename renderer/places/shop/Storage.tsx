import { WordMark } from '../../parts/WordMark.tsx';
import { useWriting } from '../../state/shop.ts';
import { amountText, readAmount } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { LawNote } from './LawNote.tsx';
import { readWhole } from './read-whole.ts';
import { Setting, SettingChoice, type Settings, useShopPage } from './setting.tsx';

type Terms = NonNullable<Settings['storage']>;
/** Three free working days are only to begin with: not a rule of any country. */
const BEGIN = { freeWorkingDays: 3, source: '', checkedOn: null };
const FREE_MOST = 60;
const change = ({ storage }: Settings, part: Partial<Terms>): Pick<Settings, 'storage'> => {
  const perDay = part.perDay ?? storage?.perDay;
  return { storage: perDay === undefined ? null : { ...(storage ?? BEGIN), ...part, perDay } };
};

/** What it usually costs to leave a car here once it is done; booking in fills it in. */
export function Storage() {
  const { settings } = useShopPage();
  const writing = useWriting();
  const terms = settings.storage;
  return (
    <section>
      <h3>
        {t('terms.storage')}{' '}
        {terms !== null && terms.checkedOn === null ? <WordMark kind="heed">{t('shop.notChecked')}</WordMark> : null}
      </h3>
      <Setting
        label={t('own.storagePerDay')}
        placeholder={t('own.storageNo')}
        show={({ storage }) => amountText(storage?.perDay ?? null, writing)}
        read={(text, now) => {
          if (text.trim() === '') return { storage: null };
          const perDay = readAmount(text, writing);
          return perDay === null || perDay <= 0 ? null : change(now, { perDay });
        }}
        wrong={t('own.storageWrong')}
        note={t('own.storagePerDayNote')}
      />
      {terms === null ? null : (
        <>
          <Setting
            label={t('own.storageFree')}
            show={(now) => String(now.storage?.freeWorkingDays ?? '')}
            read={(text, now) => {
              const freeWorkingDays = readWhole(text, 0, FREE_MOST);
              return freeWorkingDays === null ? null : change(now, { freeWorkingDays });
            }}
            wrong={t('shop.wholeWrong', { least: 0, most: FREE_MOST })}
            note={t('own.storageFreeNote')}
          />
          <LawNote of={(now) => now.storage} change={change} />
        </>
      )}
      <SettingChoice
        label={t('terms.storageDay')}
        value={settings.storageOnCollectionDay ? 'yes' : 'no'}
        options={[
          { value: 'yes', words: t('terms.storageYes') },
          { value: 'no', words: t('terms.storageNo') },
        ]}
        change={(charged) => ({ storageOnCollectionDay: charged === 'yes' })}
        note={t('terms.storageWords')}
      />
    </section>
  );
}
