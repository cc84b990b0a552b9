import { MoneyText } from '../../parts/MoneyText.tsx';
import { useShop, useWriting } from '../../state/shop.ts';
import { amountText, rateText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { moreText } from './MovedLines.tsx';
import type { Quote } from './moved.ts';
import type { ReckonedHere } from './reckon-here.ts';

/** The sums as they would stand with these answers, against the version last said yes to. */
export function WouldStand({ here, since }: { readonly here: ReckonedHere; readonly since: Quote | null }) {
  const writing = useWriting();
  const { whole } = here;
  const waste = useShop()?.settings?.wasteFee?.words ?? t('sheet.sumFees');
  const tax = whole.taxes[0];
  const taxWords =
    whole.taxes.length === 1 && tax !== undefined
      ? `${tax.tax.name} ${rateText(tax.tax.ratePpm, writing)}`
      : t('decision.taxes');
  const rows = [
    { words: t('sheet.sumSupplies'), now: whole.supplies, was: since?.supplies ?? null },
    { words: waste, now: whole.wasteFee, was: since?.wasteFee ?? null },
    { words: t('sheet.sumDiscount'), now: -whole.discount, was: since === null ? null : -since.discount },
    { words: taxWords, now: whole.tax, was: since?.tax ?? null },
  ].filter((row) => row.now !== 0 || (row.was ?? 0) !== 0);
  return (
    <div className="yes-sum">
      {rows.map((row) => (
        <p className="yes-line same" key={row.words}>
          <span>{row.words}</span>
          <span className="figure yes-was">{amountText(row.was, writing)}</span>
          <span className="figure">{amountText(row.now, writing)}</span>
          <span className="figure">{row.was === null ? '' : moreText(row.now - row.was, writing)}</span>
        </p>
      ))}
      <div className="yes-line total">
        <b>{t('parts.onTheSheet')}</b>
        <span className="figure yes-was">{amountText(since?.gross ?? null, writing)}</span>
        <b className="figure">
          <MoneyText amount={whole.gross} reckoning={whole.reckoning} />
        </b>
        <span className="figure">{since === null ? '' : moreText(whole.gross - since.gross, writing)}</span>
      </div>
    </div>
  );
}
