import type { OutputOf, ParsedInputOf } from '../../core/contract/index.ts';
import { handedOver, leastInCash } from '../../core/money/cash.ts';
import { money } from '../../core/money/money.ts';
import type { Context, Handlers } from '../context.ts';
import { newId } from '../id.ts';
import { receiptPaper } from '../order/document.ts';
import { issue } from '../order/issue.ts';
import { loadOrder } from '../order/load.ts';
import { balanceOf } from '../order/reckon.ts';
import { settingsOf, signedIn } from '../people.ts';
import { post } from '../postings.ts';
import { badInput, held, notFound } from '../refusal.ts';
import { nextNumber } from '../series.ts';

/** Takes or gives back money on an order, with its receipt and its postings. */
export async function takePayment(
  context: Context,
  input: ParsedInputOf<'payment.take'>,
): Promise<OutputOf<'payment.take'>> {
  const settings = settingsOf(context);
  const loaded = await loadOrder(context, input.orderId);
  const invoice = loaded.papers.find((paper) => paper.kind === 'invoice') ?? null;
  if (input.invoicePaperId !== null && input.invoicePaperId !== invoice?.id)
    throw notFound('invoice', input.invoicePaperId);
  const open = balanceOf(loaded);
  if (input.kind === 'payment' && !invoice) throw held([{ what: 'no-invoice-yet', with: {} }]);
  if (input.kind === 'deposit' && invoice) throw held([{ what: 'invoiced', with: { number: invoice.number } }]);
  if (input.kind === 'payment' && input.amount > open) throw held([{ what: 'more-than-open', with: { open } }]);
  if (input.kind === 'refund' && input.amount > -open)
    throw held([{ what: 'more-than-held', with: { held: Math.max(0, -open) } }]);
  const sign = input.kind === 'refund' ? -1 : 1;
  const cash = handedOver(input.way, money(input.amount), settings.cashStep);
  // A rest that no coin pays is settled by the rounding alone; a part of that size would pay a debt with nothing.
  if (cash.payable === 0 && (input.kind === 'deposit' || input.amount !== Math.abs(open)))
    throw badInput('amount', 'too-little', { least: leastInCash(settings.cashStep) });
  const number = await nextNumber(context, 'receipt');
  const balance = invoice ? open - sign * input.amount : null;
  const document = receiptPaper(context, settings, loaded, {
    number,
    what: input.kind,
    method: input.way,
    amount: cash.payable,
    invoice: invoice ? { number: invoice.number, date: invoice.issued_on, total: invoice.gross } : null,
    cashRounding: cash.difference,
    balance,
    takenBy: signedIn(context).name,
    note: input.note,
  });
  const receiptPaperId = await issue(
    context,
    loaded,
    document,
    { net: money(cash.payable), tax: money(0), gross: money(cash.payable) },
    null,
    {},
  );
  const id = newId();
  const row = {
    work_order_id: input.orderId,
    receipt_paper_id: receiptPaperId,
    note: input.note,
    person_id: signedIn(context).id,
    at: context.now,
  };
  await context.write.insert('payment', {
    ...row,
    id,
    kind: input.kind,
    way: input.way,
    amount: sign * cash.payable,
  });
  if (cash.difference !== 0)
    await context.write.insert('payment', {
      ...row,
      id: newId(),
      kind: 'rounding',
      way: '',
      amount: -sign * cash.difference,
    });
  const held_ = invoice ? 'receivable' : 'deposits';
  await post(context, id, [
    [input.way, sign * cash.payable],
    ['rounding', -sign * cash.difference],
    [held_, -sign * input.amount],
  ]);
  return { id, receiptPaperId, receiptNumber: number, handed: cash.payable, balance };
}

export const paymentHandlers: Handlers = {
  'payment.take': (input, context) => takePayment(context, input),
};
