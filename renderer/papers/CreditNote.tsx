import { useState } from 'react';
import type { OutputOf } from '../../core/contract/index.ts';
import { Button } from '../parts/Button.tsx';
import { Field } from '../parts/Field.tsx';
import { PaperLink } from '../parts/PaperLink.tsx';
import { Tick } from '../parts/Tick.tsx';
import { useFold, useUnfolded } from '../parts/unfolded.ts';
import { invoiceOf, type Order } from '../sheet/order.ts';
import { readQuantity } from '../sheet/read-line.ts';
import { Wrong } from '../sheet/Wrong.tsx';
import { useWriting } from '../state/shop.ts';
import type { CallError } from '../state/transport.ts';
import { useAsk } from '../state/use-ask.ts';
import { useDo } from '../state/use-do.ts';
import { amountText, quantityText } from '../words/figures.ts';
import { t } from '../words/t.ts';
import { unreadWords } from '../words/unread.ts';

interface Made {
  readonly paperId: string;
  readonly number: number;
  readonly gross: number;
}

type Row = OutputOf<'creditNote.left'>['rows'][number];

/** What a row is called: its line, or what rules added to the sheet. */
function rowWords(row: Row): string {
  if (row.what === 'supplies') return t('papers.creditSupplies');
  const words = row.what === 'fixed-price' ? t('papers.creditFixed', { words: row.words }) : row.words;
  return row.letter === '' ? words : `${row.letter} ${words}`;
}

/** Corrects an invoice: what it bills, whole or in part, is credited with a reason that is printed. */
export function CreditNote({ order }: { readonly order: Order }) {
  const writing = useWriting();
  const { open, unfold, fold, opener } = useFold();
  const [made, setMade] = useState<Made | null>(null);
  const invoicePaperId = invoiceOf(order)?.id;
  const left = useAsk('creditNote.left', open && invoicePaperId !== undefined ? { invoicePaperId } : null);
  if (invoicePaperId === undefined) return null;
  // Drawn once its rows are there, so that the hands begin at the first of them.
  return (
    <section aria-label={t('sheet.credit')}>
      {open && left.error !== null ? <Wrong error={left.error} /> : null}
      {open && left.data !== undefined ? (
        <CreditForm
          invoicePaperId={invoicePaperId}
          rows={left.data.rows}
          onMade={(note) => {
            setMade(note);
            fold();
          }}
          onLeave={fold}
        />
      ) : (
        <button ref={opener} type="button" className="link" onClick={unfold}>
          {t('sheet.creditOpen')}
        </button>
      )}
      {made === null ? null : (
        <p role="status">
          {t('papers.creditMade', { number: made.number, sum: amountText(made.gross, writing) })}{' '}
          <PaperLink paperId={made.paperId}>{t('papers.creditNoteOpen')}</PaperLink>
        </p>
      )}
    </section>
  );
}

interface FormProps {
  readonly invoicePaperId: string;
  readonly rows: readonly Row[];
  readonly onMade: (made: Made) => void;
  readonly onLeave: () => void;
}

function CreditForm({ invoicePaperId, rows, onMade, onLeave }: FormProps) {
  const writing = useWriting();
  const form = useUnfolded<HTMLFormElement>(onLeave);
  const credit = useDo('creditNote.issue');
  /** Quantities as typed, by row. */
  const [named, setNamed] = useState<Readonly<Record<string, string>>>({});
  const [reason, setReason] = useState('');
  const [tried, setTried] = useState(false);
  const open = rows.filter((row) => row.left > 0);
  const chosen = open.filter((row) => named[row.lineId] !== undefined);
  const quantityOf = (row: Row) => readQuantity(named[row.lineId] ?? '', writing)?.quantity ?? null;
  const wrongOf = (row: Row): string | null => {
    const quantity = quantityOf(row);
    if (quantity === null || quantity === 0)
      return tried ? unreadWords(named[row.lineId] ?? '', writing, t('papers.creditUnread')) : null;
    if (quantity > row.left) return t('papers.creditLeft', { left: quantityText(row.left, row.unit, writing) });
    const left = leftOf(credit.error, chosen.indexOf(row));
    return left === null ? null : t('papers.creditLeft', { left: quantityText(left, row.unit, writing) });
  };
  const whole = (row: Row): [string, string] => [row.lineId, quantityText(row.left, '', writing)];
  const every = open.length > 0 && open.every((row) => named[row.lineId] === whole(row)[1]);
  const go = async () => {
    if (credit.busy) return;
    setTried(true);
    const credited = chosen.flatMap((row) => {
      const quantity = quantityOf(row);
      return quantity === null || quantity === 0 || quantity > row.left ? [] : [{ lineId: row.lineId, quantity }];
    });
    if (reason.trim() === '' || credited.length !== chosen.length) return;
    const answer = await credit.run({ invoicePaperId, reason, lines: credited });
    if (answer.ok) onMade(answer.output);
  };
  return (
    <>
      <h3>{t('sheet.credit')}</h3>
      <p className="small ink-2">{t('papers.creditWhy')}</p>
      <form
        ref={form}
        className="credit"
        onSubmit={(event) => {
          event.preventDefault();
          void go();
        }}
      >
        {open.length > 1 ? (
          <Tick
            ticked={every}
            onTick={(ticked) => {
              credit.clear();
              setNamed(ticked ? Object.fromEntries(open.map(whole)) : {});
            }}
          >
            {t('papers.creditAll')}
          </Tick>
        ) : null}
        {rows.map((row) => (
          <div key={row.lineId} className="credit-row">
            <Tick
              ticked={named[row.lineId] !== undefined && row.left > 0}
              disabled={row.left === 0}
              onTick={(ticked) => {
                credit.clear();
                const { [row.lineId]: _gone, ...rest } = named;
                setNamed(ticked ? { ...rest, [row.lineId]: whole(row)[1] } : rest);
              }}
            >
              {rowWords(row)}, {amountText(row.amount, writing)}
              {row.left === 0 ? `, ${t('papers.creditGone')}` : ''}
            </Tick>
            {named[row.lineId] === undefined || row.left === 0 ? null : (
              <Field
                label={t('papers.creditQuantity', { words: rowWords(row) })}
                value={named[row.lineId] ?? ''}
                onChange={(text) => {
                  credit.clear();
                  setNamed({ ...named, [row.lineId]: text });
                }}
                figure
                inputMode="decimal"
                note={t('papers.creditOf', { quantity: quantityText(row.left, row.unit, writing) })}
                error={wrongOf(row)}
              />
            )}
          </div>
        ))}
        <Field
          label={t('sheet.creditReason')}
          value={reason}
          onChange={setReason}
          maxLength={300}
          error={tried && reason.trim() === '' ? t('papers.creditReasonNeeded') : null}
        />
        <div className="row-form">
          <Button
            type="submit"
            disabled={credit.busy}
            held={chosen.length > 0 ? null : open.length > 0 ? t('sheet.creditNone') : t('papers.creditNothing')}
          >
            {t('sheet.creditMake')}
          </Button>
          <Button onClick={onLeave}>{t('papers.creditLeave')}</Button>
        </div>
        {leftOf(credit.error, null) === null ? <Wrong error={credit.error} /> : null}
      </form>
    </>
  );
}

/** How much of a line is left to credit, where that was the trouble; `place` null asks about any line. */
function leftOf(error: CallError | null, place: number | null): number | null {
  if (error?.code !== 'bad-input') return null;
  const field = error.fields.find(
    (one) => one.problem === 'more-than-billed' && (place === null || one.path === `lines.${place}.quantity`),
  );
  return field === undefined ? null : Number(field.with?.left ?? 0);
}
