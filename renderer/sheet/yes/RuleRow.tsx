import type { OutputOf } from '../../../core/contract/index.ts';
import { hrefOf } from '../../frame/router.ts';
import { useShop, useWriting } from '../../state/shop.ts';
import { amountText, rateText, type Writing } from '../../words/figures.ts';
import { listWords } from '../../words/list.ts';
import { t } from '../../words/t.ts';
import { civilText } from '../../words/times.ts';
import type { Order } from '../order.ts';
import { saidOf } from './draft.ts';
import type { FormProps } from './YesForm.tsx';

type Rule = NonNullable<OutputOf<'shop.get'>['settings']>['overrun'];
const PPM_PER_BP = 100;

/** The owner's overrun rule as a sentence for this order, and when somebody last checked it. */
export function RuleRow({ order, draft }: FormProps) {
  const writing = useWriting();
  const rule = useShop()?.settings?.overrun;
  if (rule === undefined) return null;
  const fresh = order.jobs
    .filter((job) => !job.covered && saidOf(order, draft, job).answer !== 'unasked')
    .map((job) => job.letter);
  return (
    <section className="rule-row">
      <h3>{t('decision.rule')}</h3>
      <p>
        {ruleWords(rule, writing)} {driftWords(order, writing)}{' '}
        {fresh.length === 0
          ? t('decision.ruleNew')
          : t('decision.ruleNewHere', { n: fresh.length, letters: listWords(fresh) })}
      </p>
      <p className="small ink-2">
        {rule.checkedOn === null ? (
          <b className="in-heed">{t('decision.ruleUnchecked')}</b>
        ) : (
          t('decision.ruleChecked', { day: civilText(rule.checkedOn, writing) })
        )}{' '}
        <a className="link" href={hrefOf('shop')}>
          {t('frame.shop')}
        </a>
      </p>
    </section>
  );
}

function ruleWords(rule: Rule, writing: Writing): string {
  if (rule.mode === 'none') return t('decision.rule-none');
  const figures = {
    share: rateText(rule.bp * PPM_PER_BP, writing),
    fixed: amountText(rule.fixed, writing),
    cap: amountText(rule.cap, writing),
  };
  const most = rule.cap === null ? '' : t('decision.ruleCap', figures);
  const edge = rule.edge === 'outside' ? ` ${t('decision.ruleEdge')}` : '';
  return `${t(`decision.rule-${rule.mode}`, figures)}${most}.${edge}`;
}

/** Whether what has its yes is still inside it. */
function driftWords(order: Order, writing: Writing): string {
  const { ceiling = 0, coveredTotal = 0, coveredExcess = 0 } = order.yes;
  const over = coveredTotal - ceiling;
  if (over <= 0) return '';
  const letters = listWords(order.jobs.filter((job) => job.covered).map((job) => job.letter));
  return t(coveredExcess > 0 ? 'decision.driftAsked' : 'decision.driftInside', {
    letters,
    sum: amountText(over, writing),
  });
}
