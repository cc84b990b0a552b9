import { useWriting } from '../../state/shop.ts';
import { amountText, readAmount } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { LawNote } from './LawNote.tsx';
import { RuleHeading } from './RuleHeading.tsx';
import { Setting, SettingRow, type Settings, useShopPage } from './setting.tsx';

type Rule = NonNullable<Settings['writtenEstimate']>;
const change = ({ writtenEstimate }: Settings, part: Partial<Rule>) => ({
  writtenEstimate: { ...(writtenEstimate ?? { above: 0, source: '', checkedOn: null }), ...part },
});

/** Above which sum a written estimate is wanted before a yes, and where a customer's own most is typed. */
export function WrittenEstimate() {
  const { settings } = useShopPage();
  const writing = useWriting();
  const rule = settings.writtenEstimate;
  return (
    <section>
      <RuleHeading name={t('own.estimate')} rule={rule} />
      <p className="small ink-2">{t('own.estimateWords')}</p>
      <Setting
        label={t('own.estimateAbove')}
        placeholder={t('own.estimateNo')}
        show={({ writtenEstimate }) => amountText(writtenEstimate?.above ?? null, writing)}
        read={(text, now) => {
          if (text.trim() === '') return { writtenEstimate: null };
          const above = readAmount(text, writing);
          return above === null || above < 0 ? null : change(now, { above });
        }}
        wrong={t('start.overSumWrong')}
        note={t('own.estimateAboveNote')}
      />
      {rule === null ? null : <LawNote of={(now) => now.writtenEstimate} change={change} />}
      <SettingRow label={t('own.ownMost')} note={t('own.ownMostWords')}>
        {null}
      </SettingRow>
    </section>
  );
}
