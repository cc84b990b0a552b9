import { useWriting } from '../../state/shop.ts';
import { amountText, readAmount } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { LawNote } from './LawNote.tsx';
import { RuleHeading } from './RuleHeading.tsx';
import { Setting, SettingChoice, type Settings, useShopPage } from './setting.tsx';
import { WholeSetting } from './WholeSetting.tsx';

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
      <RuleHeading name={t('terms.storage')} rule={terms} />
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
          <WholeSetting
            label={t('own.storageFree')}
            least={0}
            most={FREE_MOST}
            show={(now) => now.storage?.freeWorkingDays}
            change={(freeWorkingDays, now) => change(now, { freeWorkingDays })}
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
