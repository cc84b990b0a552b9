import { useWriting } from '../../state/shop.ts';
import { amountText, readAmount } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { LawNote } from './LawNote.tsx';
import { RuleHeading } from './RuleHeading.tsx';
import { Setting, SettingChoice, type Settings, useShopPage } from './setting.tsx';

type Fee = NonNullable<Settings['wasteFee']>;

const begin = (): Fee => ({ amount: 0, words: t('rules.wasteWords'), when: 'charged', source: '', checkedOn: null });
const feeOf = ({ wasteFee }: Settings): Fee => wasteFee ?? begin();
const change = (settings: Settings, part: Partial<Fee>) => ({ wasteFee: { ...feeOf(settings), ...part } });

/** A fee once an order for getting rid of waste: what it is, what it is called, on which orders it stands. */
export function WasteFee() {
  const { settings } = useShopPage();
  const writing = useWriting();
  const fee = settings.wasteFee;
  return (
    <section aria-label={t('rules.waste')}>
      <RuleHeading name={t('rules.waste')} rule={fee} />
      <SettingChoice
        label={t('rules.waste')}
        value={fee === null ? 'none' : 'some'}
        options={[
          { value: 'none', words: t('rules.wasteNo') },
          { value: 'some', words: t('rules.wasteYes') },
        ]}
        change={(mode, now) => ({ wasteFee: mode === 'none' ? null : feeOf(now) })}
        note={t('rules.wasteSays')}
      />
      {fee === null ? null : (
        <>
          <Setting
            label={t('rules.wasteAmount')}
            show={(now) => amountText(feeOf(now).amount, writing)}
            read={(text, now) => {
              const amount = readAmount(text, writing);
              return amount === null || amount < 0 ? null : change(now, { amount });
            }}
            wrong={t('start.overSumWrong')}
            note={t('rules.wasteAmountSays')}
          />
          <Setting
            label={t('rules.wasteCalled')}
            show={(now) => feeOf(now).words}
            read={(words, now) => (words.trim() === '' ? null : change(now, { words }))}
            wrong={t('shop.nameNeeded')}
            note={t('rules.wasteCalledSays')}
          />
          <SettingChoice
            label={t('rules.wasteWhen')}
            value={fee.when}
            options={[
              { value: 'charged', words: t('rules.waste-charged') },
              { value: 'part-or-fluid', words: t('rules.waste-part-or-fluid') },
            ]}
            change={(when, now) => change(now, { when })}
            note={t('rules.wasteWhenSays')}
          />
          <LawNote of={feeOf} change={change} />
        </>
      )}
    </section>
  );
}
