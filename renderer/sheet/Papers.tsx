import { Button } from '../parts/Button.tsx';
import { PaperLink } from '../parts/PaperLink.tsx';
import { useNow } from '../state/now.ts';
import { useWriting } from '../state/shop.ts';
import { useDo } from '../state/use-do.ts';
import { amountText } from '../words/figures.ts';
import { t } from '../words/t.ts';
import { nearText } from '../words/times.ts';
import type { Order } from './order.ts';
import { Wrong } from './Wrong.tsx';

/** Papers of the order; each opens as it was issued, and says whether it was sent. */
export function Papers({ order }: { readonly order: Order }) {
  const writing = useWriting();
  const now = useNow(60_000);
  const sent = useDo('paper.sent');
  const how = order.customer.email === '' ? t('sheet.handedOver') : t('sheet.mailed', { to: order.customer.email });
  return (
    <section aria-label={t('sheet.papers')}>
      <h3>{t('sheet.papers')}</h3>
      {order.papers.length === 0 ? <p className="ink-2">{t('sheet.noPapers')}</p> : null}
      <ul>
        {order.papers.map((paper) => (
          <li className="paper-row" key={paper.id}>
            <PaperLink paperId={paper.id}>
              {t(`sheet.paper-${paper.kind}`, { number: paper.number, version: paper.version ?? 1 })}
            </PaperLink>
            <span className="ink-2">{nearText(paper.issuedAt, writing, now)}</span>
            <b className="figure">{amountText(paper.gross, writing)}</b>
            {paper.sent.length > 0 ? (
              <span className="small ink-2">{paper.sent.at(-1)?.how}</span>
            ) : paper.kind === 'receipt' ? null : (
              <Button small onClick={() => void sent.run({ id: paper.id, how })}>
                {t('sheet.markSent')}
              </Button>
            )}
          </li>
        ))}
      </ul>
      <Wrong error={sent.error} />
    </section>
  );
}
