import { goTo } from '../../frame/router.ts';
import { TwoSides } from '../../frame/TwoSides.tsx';
import { Button } from '../../parts/Button.tsx';
import { FootBar } from '../../parts/FootBar.tsx';
import { t } from '../../words/t.ts';
import type { Order } from '../order.ts';
import { Sheet } from '../Sheet.tsx';
import { QUOTE_FORM, QuoteForm } from './QuoteForm.tsx';
import '../yes/yes.css';
import './quote.css';

interface Props {
  readonly order: Order;
  readonly current: string | undefined;
  readonly onCurrent: (jobId: string) => void;
}

/** Issuing a quote: the sheet stays as it is, and can still be typed on; what the quote needs stands beside it. */
export function QuotePage({ order, current, onCurrent }: Props) {
  const again = order.papers.some((paper) => paper.kind === 'quote');
  return (
    <TwoSides
      first="bench"
      sheetLabel={`${t('sheet.order')} ${order.number}`}
      sheet={<Sheet order={order} locked={false} current={current} onCurrent={onCurrent} />}
      benchLabel={t('quote.side')}
      bench={<QuoteForm order={order} />}
      foot={
        <FootBar yes={order.yes}>
          <Button onClick={() => goTo('orders', order.id)}>{t('decision.leave')}</Button>
          <Button kind="go" keys="Ctrl+Enter" onClick={submit}>
            {t(again ? 'sheet.quoteAgain' : 'sheet.quote')}
          </Button>
        </FootBar>
      }
    />
  );
}

function submit(): void {
  const form = document.getElementById(QUOTE_FORM);
  if (form instanceof HTMLFormElement) form.requestSubmit();
}
