import { useWriting } from '../state/shop.ts';
import { amountText, quantityText } from '../words/figures.ts';
import { t } from '../words/t.ts';
import { type CloseOut, hoursShown } from './close-out.ts';

/** What the order made: hours sold against hours clocked, and for whoever may see it what is left over. */
export function Made({ closeOut }: { readonly closeOut: CloseOut }) {
  const writing = useWriting();
  const { hours, margin } = closeOut;
  const text = (thousandths: number) => quantityText(hoursShown(thousandths), 'h', writing);
  const costs =
    margin === null
      ? []
      : ([
          ['closeOut.costParts', margin.parts],
          ['closeOut.costOutside', margin.outside],
          ['closeOut.costStray', margin.stray],
          ['closeOut.costPay', margin.pay],
        ] as const);
  return (
    <section aria-label={t('closeOut.made')}>
      <h3>{t('closeOut.made')}</h3>
      <dl className="made">
        <dt>{t('closeOut.labourCharged')}</dt>
        <dd>{text(hours.charged)}</dd>
        <dt>{t('closeOut.labourClocked')}</dt>
        <dd>{text(hours.clocked)}</dd>
        {margin === null ? null : (
          <>
            <dt>{t('closeOut.sold')}</dt>
            <dd>{amountText(margin.sold, writing)}</dd>
            {costs
              .filter(([, cost]) => cost !== 0)
              .map(([key, cost]) => (
                <MadeRow key={key} words={t(key)} sum={amountText(-cost, writing)} />
              ))}
            <dt>{t('closeOut.profit')}</dt>
            <dd>{amountText(margin.profit, writing)}</dd>
          </>
        )}
      </dl>
      {margin === null || margin.marginX10 === null ? null : (
        <p className="small ink-2">
          {t('closeOut.profitShare', { percent: quantityText(margin.marginX10 * 100, '%', writing) })}
        </p>
      )}
      {margin === null || margin.unknownCosts === 0 ? null : (
        <p className="small ink-2">{t('closeOut.unknownCosts', { n: margin.unknownCosts })}</p>
      )}
    </section>
  );
}

function MadeRow({ words, sum }: { readonly words: string; readonly sum: string }) {
  return (
    <>
      <dt>{words}</dt>
      <dd>{sum}</dd>
    </>
  );
}
