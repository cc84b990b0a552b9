import { PaperLink } from '../parts/PaperLink.tsx';
import type { Order } from '../sheet/order.ts';
import { useNow } from '../state/now.ts';
import { useWriting } from '../state/shop.ts';
import { amountText } from '../words/figures.ts';
import { t } from '../words/t.ts';
import { nearText } from '../words/times.ts';
import { paperName } from './paper-name.ts';
import { Sent } from './Sent.tsx';

interface Props {
  readonly order: Order;
  /** A paper that has a place of its own beside this list. */
  readonly without?: string;
}

/** Papers of the order; each opens as it was issued, and says whether and how it was sent. */
export function Papers({ order, without }: Props) {
  const writing = useWriting();
  const now = useNow(60_000);
  const shown = order.papers.filter((paper) => paper.id !== without);
  if (without !== undefined && shown.length === 0) return null;
  const title = t(without === undefined ? 'sheet.papers' : 'papers.otherPapers');
  return (
    <section aria-label={title}>
      <h3>{title}</h3>
      {shown.length === 0 ? <p className="ink-2">{t('sheet.noPapers')}</p> : null}
      <ul>
        {shown.map((paper) => (
          <li className="paper-row" key={paper.id}>
            <PaperLink paperId={paper.id}>{paperName(paper)}</PaperLink>
            <span className="ink-2">{nearText(paper.issuedAt, writing, now)}</span>
            <b className="figure">{amountText(paper.gross, writing)}</b>
            {paper.kind === 'receipt' ? null : <Sent order={order} paper={paper} />}
          </li>
        ))}
      </ul>
    </section>
  );
}
