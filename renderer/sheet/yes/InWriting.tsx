import type { Unwritten } from '../../../core/order/written-estimate.ts';
import { useShop, useWriting } from '../../state/shop.ts';
import { amountText } from '../../words/figures.ts';
import { listWords } from '../../words/list.ts';
import { t } from '../../words/t.ts';
import { civilText } from '../../words/times.ts';

interface Props {
  readonly lacks: Unwritten | null;
  /** Letters of the jobs said yes to. */
  readonly letters: readonly string[];
}

/** What is missing in writing above the shop's sum, what would be right, and by which rule; nothing where nothing is. */
export function InWriting({ lacks, letters }: Props) {
  const writing = useWriting();
  const rule = useShop()?.settings?.writtenEstimate ?? null;
  if (lacks === null || rule === null) return null;
  return (
    <p className="small" role="status">
      <b className="in-heed">{t('own.estimateMissing', { sum: amountText(rule.above, writing) })}</b>{' '}
      {t(`own.estimate-${lacks}`, { letters: listWords([...letters]) })}{' '}
      <span className="ink-2">
        {rule.checkedOn === null
          ? t('own.estimateUnchecked')
          : t('own.estimateSource', {
              source: rule.source || t('own.estimateOwn'),
              day: civilText(rule.checkedOn, writing),
            })}
      </span>
    </p>
  );
}
