import { money } from '../../../core/money/money.ts';
import { allowance } from '../../../core/order/allowance.ts';
import { useWriting } from '../../state/shop.ts';
import { amountText, rateText, readAmount } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { civilText } from '../../words/times.ts';
import { readPercent } from '../set-up/percent.ts';
import { RuleHeading } from './RuleHeading.tsx';
import { Setting, SettingChoice, SettingDay, type Settings, useShopPage } from './setting.tsx';

type Rule = Settings['overrun'];
const MODES = ['none', 'pct', 'lesser', 'greater'] as const;

/** How far above a yes the price of the same scope may drift: the owner's own rule, with its source. */
export function YesRule() {
  const { settings } = useShopPage();
  const writing = useWriting();
  const rule = settings.overrun;
  const change = (now: Settings, part: Partial<Rule>) => ({ overrun: { ...now.overrun, ...part } });
  const sum = (text: string) => {
    const read = readAmount(text, writing);
    return read === null || read < 0 ? null : read;
  };
  return (
    <section>
      <RuleHeading name={t('start.overrun')} rule={rule} />
      <p>
        <Example rule={rule} />
      </p>
      <SettingChoice
        label={t('start.overrun')}
        value={rule.mode}
        options={MODES.map((value) => ({
          value,
          words: value === 'greater' ? t('shop.greater') : t(`start.${value}`),
        }))}
        change={(mode, now) => change(now, { mode })}
      />
      {rule.mode === 'none' ? null : (
        <>
          <Setting
            label={t('start.overPercent')}
            show={({ overrun }) => rateText(overrun.bp * 100, writing)}
            read={(text, now) => {
              const bp = readPercent(text, 2);
              return bp === null ? null : change(now, { bp });
            }}
            wrong={t('start.overWrong')}
          />
          {rule.mode === 'pct' ? null : (
            <Setting
              label={t('start.overSum')}
              show={({ overrun }) => amountText(overrun.fixed, writing)}
              read={(text, now) => {
                const fixed = sum(text);
                return fixed === null ? null : change(now, { fixed });
              }}
              wrong={t('start.overSumWrong')}
            />
          )}
          <Setting
            label={t('shop.overCap')}
            placeholder={t('shop.none')}
            show={({ overrun }) => amountText(overrun.cap, writing)}
            read={(text, now) => {
              if (text.trim() === '') return change(now, { cap: null });
              const cap = sum(text);
              return cap === null ? null : change(now, { cap });
            }}
            wrong={t('start.overSumWrong')}
          />
          <SettingChoice
            label={t('shop.overBase')}
            value={rule.base}
            options={[
              { value: 'gross', words: t('shop.base-gross') },
              { value: 'net', words: t('shop.base-net') },
            ]}
            change={(base, now) => change(now, { base })}
          />
          <SettingChoice
            label={t('shop.overEdge')}
            value={rule.edge}
            options={[
              { value: 'inside', words: t('shop.edge-inside') },
              { value: 'outside', words: t('shop.edge-outside') },
            ]}
            change={(edge, now) => change(now, { edge })}
          />
        </>
      )}
      <Setting
        label={t('start.source')}
        show={({ overrun }) => overrun.source}
        read={(source, now) => change(now, { source })}
        wrong={t('shop.wordsWrong')}
      />
      <SettingDay
        label={t('start.checkedOn')}
        show={({ overrun }) => overrun.checkedOn ?? ''}
        read={(text, now) => change(now, { checkedOn: text === '' ? null : text })}
      />
      <p className="small ink-2">{t('start.overHint')}</p>
    </section>
  );
}

/** A yes of a round sum that the example is reckoned from, in the currency's minor units. */
const EXAMPLE = '1000';

/** The rule as one sentence with figures, worked out by the program's own function. */
function Example({ rule }: { readonly rule: Rule }) {
  const writing = useWriting();
  const yes = money(readAmount(EXAMPLE, writing) ?? 100_000);
  const amounts = { fixed: money(rule.fixed), cap: rule.cap === null ? null : money(rule.cap) };
  const { limit } = allowance({ ...rule, ...amounts }, yes, yes);
  const checked = rule.checkedOn === null ? '' : t('shop.checked', { day: civilText(rule.checkedOn, writing) });
  return (
    <>
      {limit === yes
        ? t('shop.exampleNone', { yes: amountText(yes, writing) })
        : t('shop.example', { yes: amountText(yes, writing), limit: amountText(limit, writing) })}{' '}
      {t('shop.newWork')} <span className="ink-2">{checked}</span>
    </>
  );
}
