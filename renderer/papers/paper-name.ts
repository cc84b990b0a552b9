import type { Order } from '../sheet/order.ts';
import { t } from '../words/t.ts';

export type Paper = Order['papers'][number];

/** 'Quote 300, version 1', 'Invoice 1157'. */
export function paperName(paper: Paper): string {
  return t(`sheet.paper-${paper.kind}`, { number: paper.number, version: paper.version ?? 1 });
}

/** The paper that Alt P prints: the invoice and what corrects it before a quote, the newest first; a receipt last. */
export function newestPaper(order: Order): Paper | undefined {
  const of = (...kinds: readonly Paper['kind'][]) => order.papers.filter((paper) => kinds.includes(paper.kind)).at(-1);
  return of('invoice', 'credit-note') ?? of('quote') ?? of('receipt');
}
