import { parseQuantity } from '../../../core/measure/quantity.ts';
import { clockedHours } from '../../../core/order/labour.ts';
import { useWriting } from '../../state/shop.ts';
import { quantityText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { Setting, SettingChoice, useShopPage } from './setting.tsx';

/** Minutes that the example is reckoned from. */
const EXAMPLE = 76;

/** How clocked time is brought to the hours of a line that charges as clocked. */
export function Billing() {
  const { settings } = useShopPage();
  const writing = useWriting();
  const { billing } = settings;
  const hours = quantityText(clockedHours(EXAMPLE, billing), 'h', writing);
  return (
    <section aria-label={t('rules.billing')}>
      <h3>{t('rules.billing')}</h3>
      <p className="small ink-2">
        {t('rules.billingSays')} {t('rules.billingExample', { minutes: EXAMPLE, hours })}
      </p>
      <Setting
        label={t('rules.billingStep')}
        show={(now) => quantityText(now.billing.step, '', writing)}
        read={(text, now) => {
          const step = parseQuantity(text.replace(/\s*h$/i, ''), writing);
          return step === null || step < 10 || step > 1000 ? null : { billing: { ...now.billing, step } };
        }}
        wrong={t('rules.billingWrong')}
      />
      <SettingChoice
        label={t('rules.billingWay')}
        value={billing.way}
        options={[
          { value: 'nearest', words: t('rules.billing-nearest') },
          { value: 'up', words: t('rules.billing-up') },
        ]}
        change={(way, now) => ({ billing: { ...now.billing, way } })}
      />
    </section>
  );
}
