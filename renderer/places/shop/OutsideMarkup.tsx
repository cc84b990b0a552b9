import { useWriting } from '../../state/shop.ts';
import { amountText, rateText, readAmount } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { readPercent } from '../set-up/percent.ts';
import { Setting, SettingChoice, type Settings, useShopPage } from './setting.tsx';

type Outside = NonNullable<Settings['outsideMarkup']>;
const outsideOf = ({ outsideMarkup }: Settings): Outside => outsideMarkup ?? { bp: 0, limit: null };

/** Outside work: a share of its bill on top, at most a limit. */
export function OutsideMarkup() {
  const { settings } = useShopPage();
  const writing = useWriting();
  return (
    <section aria-label={t('rules.outside')}>
      <h3>{t('rules.outside')}</h3>
      <SettingChoice
        label={t('rules.outside')}
        value={settings.outsideMarkup === null ? 'none' : 'some'}
        options={[
          { value: 'none', words: t('rules.markupNone') },
          { value: 'some', words: t('rules.outsideSome') },
        ]}
        change={(mode, now) => ({ outsideMarkup: mode === 'none' ? null : outsideOf(now) })}
        note={t('rules.outsideSays')}
      />
      {settings.outsideMarkup === null ? null : (
        <>
          <Setting
            label={t('rules.outsideBp')}
            show={(now) => rateText(outsideOf(now).bp * 100, writing)}
            read={(text, now) => {
              const bp = readPercent(text, 2, 1000);
              return bp === null ? null : { outsideMarkup: { ...outsideOf(now), bp } };
            }}
            wrong={t('rules.markupPercentWrong')}
            note={t('rules.outsideBpSays')}
          />
          <Setting
            label={t('rules.outsideLimit')}
            placeholder={t('shop.none')}
            show={(now) => amountText(outsideOf(now).limit, writing)}
            read={(text, now) => {
              const limit = text.trim() === '' ? null : readAmount(text, writing);
              if (text.trim() !== '' && (limit === null || limit < 0)) return null;
              return { outsideMarkup: { ...outsideOf(now), limit } };
            }}
            wrong={t('start.overSumWrong')}
            note={t('rules.outsideLimitSays')}
          />
        </>
      )}
    </section>
  );
}
