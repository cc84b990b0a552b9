import { useState } from 'react';
import { Button } from '../parts/Button.tsx';
import { Field } from '../parts/Field.tsx';
import { PaperLink } from '../parts/PaperLink.tsx';
import { Tick } from '../parts/Tick.tsx';
import { useFold, useUnfolded } from '../parts/unfolded.ts';
import { invoiceOf, type Line, type Order } from '../sheet/order.ts';
import { readQuantity } from '../sheet/read-line.ts';
import { Wrong } from '../sheet/Wrong.tsx';
import { useWriting } from '../state/shop.ts';
import type { CallError } from '../state/transport.ts';
import { useDo } from '../state/use-do.ts';
import { amountText, quantityText } from '../words/figures.ts';
import { t } from '../words/t.ts';
import { unreadWords } from '../words/unread.ts';

interface Made {
  readonly paperId: string;
  readonly number: number;
  readonly gross: number;
}

/** Corrects an invoice: lines of it, whole or in part, are credited with a reason that is printed. */
export function CreditNote({ order }: { readonly order: Order }) {
  const writing = useWriting();
  const { open, unfold, fold, opener } = useFold();
  const [made, setMade] = useState<Made | null>(null);
  if (invoiceOf(order) === undefined) return null;
  return (
    <section aria-label={t('sheet.credit')}>
      {open ? (
        <CreditForm
          order={order}
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
  readonly order: Order;
  readonly onMade: (made: Made) => void;
  readonly onLeave: () => void;
}

function CreditForm({ order, onMade, onLeave }: FormProps) {
  const writing = useWriting();
  const form = useUnfolded<HTMLFormElement>(onLeave);
  const credit = useDo('creditNote.issue');
  /** Quantities as typed, by line. */
  const [named, setNamed] = useState<Readonly<Record<string, string>>>({});
  const [reason, setReason] = useState('');
  const [tried, setTried] = useState(false);
  const lines = order.jobs.flatMap((job) => job.lines.map((line) => ({ letter: job.letter, line })));
  const chosen = lines.filter(({ line }) => named[line.id] !== undefined);
  const quantityOf = (line: Line) => readQuantity(named[line.id] ?? '', writing)?.quantity ?? null;
  const wrongOf = (line: Line): string | null => {
    const quantity = quantityOf(line);
    if (quantity === null || quantity === 0)
      return tried ? unreadWords(named[line.id] ?? '', writing, t('papers.creditUnread')) : null;
    if (quantity > line.charged)
      return t('papers.creditMost', { most: quantityText(line.charged, line.unit, writing) });
    const left = leftOf(
      credit.error,
      chosen.findIndex((one) => one.line.id === line.id),
    );
    return left === null ? null : t('papers.creditLeft', { left: quantityText(left, line.unit, writing) });
  };
  const go = async () => {
    if (credit.busy) return;
    setTried(true);
    const credited = chosen.flatMap(({ line }) => {
      const quantity = quantityOf(line);
      return quantity === null || quantity === 0 || quantity > line.charged ? [] : [{ lineId: line.id, quantity }];
    });
    const invoicePaperId = invoiceOf(order)?.id;
    if (reason.trim() === '' || credited.length !== chosen.length || invoicePaperId === undefined) return;
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
        {lines.map(({ letter, line }) => (
          <div key={line.id} className="credit-row">
            <Tick
              ticked={named[line.id] !== undefined}
              onTick={(ticked) => {
                credit.clear();
                const { [line.id]: _gone, ...rest } = named;
                setNamed(ticked ? { ...rest, [line.id]: quantityText(line.charged, '', writing) } : rest);
              }}
            >
              {letter} {line.words}, {amountText(line.amount, writing)}
            </Tick>
            {named[line.id] === undefined ? null : (
              <Field
                label={t('papers.creditQuantity', { words: line.words })}
                value={named[line.id] ?? ''}
                onChange={(text) => {
                  credit.clear();
                  setNamed({ ...named, [line.id]: text });
                }}
                figure
                inputMode="decimal"
                note={t('papers.creditOf', { quantity: quantityText(line.charged, line.unit, writing) })}
                error={wrongOf(line)}
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
          <Button type="submit" disabled={credit.busy} held={chosen.length === 0 ? t('sheet.creditNone') : null}>
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
