import { save } from '../sheet/save.ts';
import { remember } from '../sheet/undo.ts';
import { Wrong } from '../sheet/Wrong.tsx';
import { useWriting } from '../state/shop.ts';
import { useDo } from '../state/use-do.ts';
import { amountText, quantityText } from '../words/figures.ts';
import { t } from '../words/t.ts';
import { type CloseOutLine, hoursShown } from './close-out.ts';

interface Props {
  readonly line: CloseOutLine;
  readonly quoted: boolean;
  /** Of the line on the sheet. */
  readonly revision: number | undefined;
}

/** One line held against its quote and against what was really used; what differs is said in words. */
export function ClosingLine({ line, quoted, revision }: Props) {
  const writing = useWriting();
  const change = useDo('line.change');
  const give = useDo('line.give');
  const labour = line.kind === 'labour';
  const text = (thousandths: number) =>
    quantityText(labour ? hoursShown(thousandths) : thousandths, line.unit, writing);
  const used = line.used?.quantity ?? null;
  const { charge } = line;
  const overQuote = line.quoted === null || used === null ? 0 : used - line.quoted.quantity;
  const unquoted = quoted && line.quoted === null && used !== null && used > 0;
  // Hours are sold as quoted, whatever the clock says; what is drawn from the shelf is charged as drawn.
  const stray = labour || used === null || charge.given ? 0 : used - charge.quantity;
  const chargeUsed = async (on: number, quantity: number) => {
    const answer = await change.run({ id: line.lineId, revision: on, change: { quantity } });
    if (!answer.ok) return;
    const { id, revision } = answer.output;
    const before = { quantity: charge.quantity };
    remember({ at: null, words: line.words, run: () => save('line.change', { id, revision, change: before }) });
  };
  const notes = [
    line.partNumber,
    line.quoted === null && quoted ? t('closeOut.notQuoted') : '',
    overQuote > 0 ? t('closeOut.overQuote', { more: text(overQuote) }) : '',
    stray > 0 ? t('closeOut.usedMore', { more: text(stray) }) : '',
    stray < 0 ? (used === 0 ? t('closeOut.usedNone') : t('closeOut.usedLess', { less: text(-stray) })) : '',
    charge.given ? t('closeOut.given') : '',
  ].filter((note) => note !== '');
  return (
    <tr className={charge.given ? 'given' : undefined}>
      <td>
        {line.words} {notes.length === 0 ? null : <em className="closing-note">{notes.join(', ')}</em>}{' '}
        {stray !== 0 && used !== null && used > 0 && revision !== undefined ? (
          <button
            type="button"
            className="link small"
            aria-label={t('closeOut.chargeUsedOf', { quantity: text(used), words: line.words })}
            onClick={() => void chargeUsed(revision, used)}
          >
            {t('closeOut.chargeUsed', { quantity: text(used) })}
          </button>
        ) : null}
        {charge.given && revision !== undefined ? (
          <button
            type="button"
            className="link small"
            aria-label={t('closeOut.chargeAgainOf', { words: line.words })}
            onClick={() => void give.run({ id: line.lineId, revision, given: false })}
          >
            {t('closeOut.chargeAgain')}
          </button>
        ) : null}
        <Wrong error={change.error ?? give.error} />
      </td>
      <td className="figure ink-2">{line.quoted === null ? t('closeOut.none') : text(line.quoted.quantity)}</td>
      <td className={overQuote > 0 || unquoted ? 'figure in-heed semi' : 'figure'}>
        {used === null ? '' : text(used)}
      </td>
      <td className="figure">
        <span className="charge-quantity">{text(charge.quantity)}</span>
        {amountText(charge.total, writing)}
      </td>
    </tr>
  );
}
