import { markupsOf, offeredPrice } from '../../../core/money/offered-price.ts';
import { Button } from '../../parts/Button.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { useShop, useWriting } from '../../state/shop.ts';
import { useDo } from '../../state/use-do.ts';
import { amountText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import type { StockRow } from './StockBar.tsx';

/** What a part would be sold at by the shop's markup on its new cost, where that is another price than it has. */
export function NewPrice({ part, cost }: { readonly part: StockRow; readonly cost: number }) {
  const writing = useWriting();
  const settings = useShop()?.settings;
  const change = useDo('part.change');
  const offered = settings ? offeredPrice('part', cost, markupsOf(settings)) : null;
  if (offered === null || part.price === null || offered === part.price) return null;
  const said = { price: amountText(offered, writing), cost: amountText(cost, writing) };
  return (
    <div>
      <p className="small">
        {t('rules.otherThanOffered', { ...said, now: amountText(part.price, writing) })}{' '}
        <Button
          small
          disabled={change.busy}
          onClick={() => void change.run({ id: part.id, revision: part.revision, change: { price: offered } })}
        >
          {t('rules.takeOffered', said)}
        </Button>
      </p>
      <NotSaved error={change.error} onAgain={() => void change.again()} />
    </div>
  );
}
