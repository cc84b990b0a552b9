import { markupsOf, offeredPrice } from '../../../core/money/offered-price.ts';
import { useShop, useWriting } from '../../state/shop.ts';
import { useDo } from '../../state/use-do.ts';
import { amountText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import type { Line } from '../order.ts';
import { Wrong } from '../Wrong.tsx';

/** What the shop's markup makes of a line's cost: whether the price is that one, or another was typed. */
export function Offered({ line }: { readonly line: Line }) {
  const writing = useWriting();
  const settings = useShop()?.settings;
  const change = useDo('line.change');
  const offered = settings ? offeredPrice(line.kind, line.unitCost, markupsOf(settings)) : null;
  if (offered === null || line.unitPrice === null) return null;
  const said = { price: amountText(offered, writing), cost: amountText(line.unitCost, writing) };
  if (offered === line.unitPrice) return <p className="small ink-2 wide">{t('rules.asOffered', said)}</p>;
  return (
    <p className="small wide">
      {t('rules.otherThanOffered', { ...said, now: amountText(line.unitPrice, writing) })}{' '}
      <button
        type="button"
        className="link small"
        onClick={() => void change.run({ id: line.id, revision: line.revision, change: { unitPrice: offered } })}
      >
        {t('rules.takeOffered', said)}
      </button>
      <Wrong error={change.error} />
    </p>
  );
}
