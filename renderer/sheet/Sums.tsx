import { Fragment } from 'react';
import { taxName } from '../../core/paper/figures.ts';
import { MoneyText } from '../parts/MoneyText.tsx';
import { useShop, useWriting } from '../state/shop.ts';
import { amountText, quantityText, rateText } from '../words/figures.ts';
import { t } from '../words/t.ts';
import { Discounts } from './Discounts.tsx';
import { type Line, type Order, sumReckoning } from './order.ts';

type Row = readonly [words: string, amount: number, reckoning: ReturnType<typeof sumReckoning>];

/** The sums under the jobs as the shop reckons them; tax that the prices hold stands after the total, it is not added. */
export function Sums({ order, locked }: { readonly order: Order; readonly locked: boolean }) {
  const writing = useWriting();
  const held = useShop()?.settings?.prices === 'inclusive';
  const sums = order.sums;
  if (sums === null) return null;
  const lines = order.jobs.flatMap((job) => job.lines);
  const ofKinds = (...kinds: readonly Line['kind'][]) => {
    const ids = new Set(lines.filter((line) => kinds.includes(line.kind)).map((line) => line.id));
    return sumReckoning(order, (step) => step.rule.startsWith('line-') && ids.has(String(step.on.line)));
  };
  const byRule = (rule: string) => sumReckoning(order, (step) => step.rule === rule);
  const rows: readonly Row[] = [
    [t('sheet.sumLabour', { hours: quantityText(sums.labourHours, 'h', writing) }), sums.labour, ofKinds('labour')],
    [t('sheet.sumParts'), sums.parts, ofKinds('part', 'fluid')],
    [t('sheet.sumOutside'), sums.outside, ofKinds('outside')],
    [t('sheet.sumSupplies'), sums.supplies, sumReckoning(order, (step) => step.rule.startsWith('supplies'))],
    [t('sheet.sumFees'), sums.fees, ofKinds('fee')],
    [sums.wasteFee.words, sums.wasteFee.amount, byRule('waste-fee')],
    [t('sheet.sumCore'), sums.core, ofKinds('core')],
    [t('sheet.sumDiscount'), -Math.abs(sums.discount), byRule('sheet-discount')],
  ];
  const taxRow = (tax: (typeof sums.taxes)[number]): Row => [
    t(tax.oldUnits ? 'sheet.sumTaxOld' : held ? 'sheet.sumTaxHeld' : 'sheet.sumTax', {
      name: taxName(tax.name, rateText(tax.ratePpm, writing)),
      rate: rateText(tax.ratePpm, writing),
      base: amountText(tax.base, writing),
    }),
    tax.amount,
    sumReckoning(
      order,
      (step) =>
        (tax.oldUnits ? step.rule === 'old-unit' : false) ||
        (step.rule.startsWith(tax.oldUnits ? 'old-unit-tax' : 'tax-') &&
          step.on.name === tax.name &&
          step.on.ratePpm === tax.ratePpm),
    ),
  ];
  const taxes = sums.taxes.filter((tax) => !tax.oldUnits).map(taxRow);
  const onOldUnits = sums.taxes.filter((tax) => tax.oldUnits).map(taxRow);
  return (
    <div className="sum" aria-live="polite">
      <div className="small ink-2">
        {order.ownMaximum === null ? '' : t('sheet.ownMaximum', { sum: amountText(order.ownMaximum, writing) })}
        <Discounts order={order} locked={locked} />
      </div>
      <dl>
        <Rows rows={held ? [...rows, ...onOldUnits] : [...rows, ...taxes, ...onOldUnits]} />
        <dt className="total">{t('parts.onTheSheet')}</dt>
        <dd className="total">
          <MoneyText amount={sums.gross} reckoning={sums.reckoning} />
        </dd>
        {held ? <Rows rows={taxes} /> : null}
      </dl>
    </div>
  );
}

function Rows({ rows }: { readonly rows: readonly Row[] }) {
  return rows
    .filter(([, amount]) => amount !== 0)
    .map(([words, amount, reckoning]) => (
      <Fragment key={words}>
        <dt>{words}</dt>
        <dd>
          <MoneyText amount={amount} reckoning={reckoning} />
        </dd>
      </Fragment>
    ));
}
