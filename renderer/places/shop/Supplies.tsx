import { SUPPLIES_BASES } from '../../../core/money/line.ts';
import { useWriting } from '../../state/shop.ts';
import { amountText, rateText, readAmount } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { readPercent } from '../set-up/percent.ts';
import { Setting, SettingChoice, type Settings, useShopPage } from './setting.tsx';

type Share = Extract<Settings['supplies'], { mode: 'percent' }>;
const SHARE: Share = { mode: 'percent', base: 'labour', bp: 0, cap: null, floor: null, sentence: '' };
const shareOf = ({ supplies }: Settings): Share => (supplies.mode === 'percent' ? supplies : SHARE);

/** Supplies: each on its line, or a share of labour, parts or both that the papers explain. */
export function Supplies() {
  const { settings } = useShopPage();
  const writing = useWriting();
  return (
    <section>
      <h3>{t('shop.supplies')}</h3>
      <SettingChoice
        label={t('shop.supplies')}
        value={settings.supplies.mode}
        options={[
          { value: 'itemise', words: t('shop.itemise') },
          { value: 'percent', words: t('shop.share') },
        ]}
        change={(mode, now) => ({ supplies: mode === 'itemise' ? { mode } : shareOf(now) })}
        note={t('own.suppliesNote')}
      />
      {settings.supplies.mode === 'itemise' ? null : (
        <>
          <SettingChoice
            label={t('shop.suppliesBase')}
            value={settings.supplies.base}
            options={SUPPLIES_BASES.map((value) => ({ value, words: t(`shop.suppliesBase-${value}`) }))}
            change={(base, now) => ({ supplies: { ...shareOf(now), base } })}
            note={t('own.suppliesBaseNote')}
          />
          <Setting
            label={t('shop.shareOf')}
            show={(now) => rateText(shareOf(now).bp * 100, writing)}
            read={(text, now) => {
              const bp = readPercent(text, 2);
              return bp === null ? null : { supplies: { ...shareOf(now), bp } };
            }}
            wrong={t('start.overWrong')}
            note={t('own.suppliesShareNote')}
          />
          {(['floor', 'cap'] as const).map((edge) => (
            <Setting
              key={edge}
              label={t(`shop.${edge}`)}
              placeholder={t('shop.none')}
              show={(now) => amountText(shareOf(now)[edge], writing)}
              read={(text, now) => {
                const sum = text.trim() === '' ? null : readAmount(text, writing);
                if (text.trim() !== '' && (sum === null || sum < 0)) return null;
                return { supplies: { ...shareOf(now), [edge]: sum } };
              }}
              wrong={t('start.overSumWrong')}
              note={t(`own.supplies-${edge}-note`)}
            />
          ))}
          <Setting
            label={t('shop.suppliesSentence')}
            show={(now) => shareOf(now).sentence}
            read={(sentence, now) => ({ supplies: { ...shareOf(now), sentence } })}
            wrong={t('shop.wordsWrong')}
            note={t('own.suppliesSentenceNote')}
          />
        </>
      )}
    </section>
  );
}
