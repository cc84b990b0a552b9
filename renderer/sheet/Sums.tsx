import { Fragment } from 'react';
import { MoneyText } from '../parts/MoneyText.tsx';
import { useWriting } from '../state/shop.ts';
import { amountText, quantityText, rateText } from '../words/figures.ts';
import { t } from '../words/t.ts';
import { Discounts } from './Discounts.tsx';
import type { Order } from './order.ts';

/** The sums under the jobs, tax by rate, as the shop reckons them. */
export function Sums({ order, locked }: { readonly order: Order; readonly locked: boolean }) {
  const writing = useWriting();
  const sums = order.sums;
  if (sums === null) return null;
  const rows: (readonly [string, number])[] = [
    [t('sheet.sumLabour', { hours: quantityText(sums.labourHours, 'h', writing) }), sums.labour],
    [t('sheet.sumParts'), sums.parts],
    [t('sheet.sumOutside'), sums.outside],
    [t('sheet.sumSupplies'), sums.supplies],
    [t('sheet.sumFees'), sums.fees],
    [t('sheet.sumCore'), sums.core],
    [t('sheet.sumDiscount'), -Math.abs(sums.discount)],
    ...sums.taxes.map(
      (tax) =>
        [
          t('sheet.sumTax', {
            name: tax.name,
            rate: rateText(tax.ratePpm, writing),
            base: amountText(tax.base, writing),
          }),
          tax.amount,
        ] as const,
    ),
  ];
  return (
    <div className="sum" aria-live="polite">
      <div className="small ink-2">
        {order.ownMaximum === null ? '' : t('sheet.ownMaximum', { sum: amountText(order.ownMaximum, writing) })}
        <Discounts order={order} locked={locked} />
      </div>
      <dl>
        {rows
          .filter(([, amount]) => amount !== 0)
          .map(([words, amount]) => (
            <Fragment key={words}>
              <dt>{words}</dt>
              <dd>{amountText(amount, writing)}</dd>
            </Fragment>
          ))}
        <dt className="total">{t('parts.onTheSheet')}</dt>
        <dd className="total">
          <MoneyText amount={sums.gross} reckoning={sums.reckoning} />
        </dd>
      </dl>
    </div>
  );
}
