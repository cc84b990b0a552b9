import { useWriting } from '../../state/shop.ts';
import { rateText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { readPercent } from '../set-up/percent.ts';
import { LawNote } from './LawNote.tsx';
import { RuleHeading } from './RuleHeading.tsx';
import { Setting, SettingChoice, type Settings, useShopPage } from './setting.tsx';

type Rule = Settings['coreTax'];
const WAYS = ['refunded', 'kept', 'kept-on-new', 'share', 'none'] as const;
const change = ({ coreTax }: Settings, part: Partial<Rule>) => ({ coreTax: { ...coreTax, ...part } });

/** How a charge on an old unit is taxed, out and back: the owner's own reading of the local rule, with its source. */
export function CoreTax() {
  const { settings } = useShopPage();
  const writing = useWriting();
  const rule = settings.coreTax;
  return (
    <section aria-label={t('rules.core')}>
      <RuleHeading name={t('rules.core')} rule={rule} />
      <SettingChoice
        label={t('rules.core')}
        value={rule.way}
        options={WAYS.map((value) => ({ value, words: t(`rules.core-${value}`) }))}
        change={(way, now) => change(now, { way })}
        note={t(`rules.coreSays-${rule.way}`)}
      />
      {rule.way === 'share' ? (
        <Setting
          label={t('rules.coreShare')}
          show={({ coreTax }) => rateText(coreTax.bp * 100, writing)}
          read={(text, now) => {
            const bp = readPercent(text, 2);
            return bp === null ? null : change(now, { bp });
          }}
          wrong={t('start.overWrong')}
          note={t('rules.coreShareSays')}
        />
      ) : null}
      <LawNote of={({ coreTax }) => coreTax} change={change} />
    </section>
  );
}
