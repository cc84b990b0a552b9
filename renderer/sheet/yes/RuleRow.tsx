import type { OutputOf } from '../../../core/contract/index.ts';
import { unwritten } from '../../../core/order/written-estimate.ts';
import { hrefOf } from '../../frame/router.ts';
import { useShop, useWriting } from '../../state/shop.ts';
import { amountText, rateText, type Writing } from '../../words/figures.ts';
import { listWords } from '../../words/list.ts';
import { t } from '../../words/t.ts';
import { civilText } from '../../words/times.ts';
import type { Order } from '../order.ts';
import { answerAfter, saidOf } from './draft.ts';
import { InWriting } from './InWriting.tsx';
import { answeredQuote } from './read-draft.ts';
import type { FormProps } from './YesForm.tsx';

type Rule = NonNullable<OutputOf<'shop.get'>['settings']>['overrun'];
const PPM_PER_BP = 100;

/** The owner's overrun rule as a sentence for this order, and when somebody last checked it. */
export function RuleRow({ order, draft, quotes, ceiling }: FormProps) {
  const writing = useWriting();
  const settings = useShop()?.settings;
  const rule = settings?.overrun;
  const estimate = settings?.writtenEstimate;
  if (rule === undefined) return null;
  const fresh = order.jobs
    .filter((job) => !job.covered && saidOf(order, draft, job).answer !== 'unasked')
    .map((job) => job.letter);
  const said = order.jobs.filter((job) => answerAfter(order, draft, job) === 'yes');
  const lacks =
    ceiling === null
      ? null
      : unwritten(
          estimate?.above ?? null,
          {
            ceiling,
            jobIds: said.map((job) => job.id),
            way: draft.way,
            quotePaperId: answeredQuote(order, draft, quotes)?.paperId ?? null,
          },
          quotes.map((quote) => ({ paperId: quote.paperId, jobIds: quote.jobs.map((job) => job.jobId) })),
        );
  return (
    <section className="rule-row">
      <h3>{t('decision.rule')}</h3>
      <p>
        {ruleWords(rule, writing)} {driftWords(order, writing)}{' '}
        {fresh.length === 0
          ? t('decision.ruleNew')
          : t('decision.ruleNewHere', { n: fresh.length, letters: listWords(fresh) })}
      </p>
      <InWriting lacks={lacks} letters={said.map((job) => job.letter)} />
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
