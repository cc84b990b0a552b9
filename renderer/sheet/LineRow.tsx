import { useState } from 'react';
import type { InputOf } from '../../core/contract/index.ts';
import { useWriting } from '../state/shop.ts';
import { useDo } from '../state/use-do.ts';
import { amountText, quantityText, readAmount } from '../words/figures.ts';
import { t } from '../words/t.ts';
import { unreadWords } from '../words/unread.ts';

import { LineMore } from './edit/LineMore.tsx';
import type { Line, Order } from './order.ts';
import { readQuantity } from './read-line.ts';
import { SheetCell } from './SheetCell.tsx';
import { save } from './save.ts';
import { remember } from './undo.ts';
import { Wrong } from './Wrong.tsx';

type Change = InputOf<'line.change'>['change'];
type Row = Readonly<Record<string, unknown>>;

interface Props {
  readonly order: Order;
  readonly line: Line;
  readonly locked: boolean;
}

/** One line of a job: its words, quantity and price are cells; its amount is reckoned. */
export function LineRow({ order, line, locked }: Props) {
  const writing = useWriting();
  const takeOut = useDo('line.takeOut');
  const give = useDo('line.give');
  const [more, setMore] = useState(false);
  const change = (revision: number, fields: Change) => save('line.change', { id: line.id, revision, change: fields });
  const inBook = line.billing === 'book';
  const quantityOf = (row: Row) => quantityText(Number(row[inBook ? 'book' : 'quantity']), String(row.unit), writing);
  const saveQuantity = (text: string, revision: number) => {
    const read = readQuantity(text, writing);
    if (read === null) return null;
    const unit = read.unit === '' ? line.unit : read.unit;
    return change(revision, inBook ? { book: read.quantity, unit } : { quantity: read.quantity, unit });
  };
  const people = line.people.length > 0 ? t('sheet.lineHours', { hours: hoursText(line, writing) }) : '';
  const shared =
    inBook && line.charged !== line.book
      ? t('edit.chargedHours', { charged: quantityText(line.charged, line.unit, writing) })
      : '';
  const notes = [
    line.partNumber,
    people,
    shared,
    line.condition ? t(`sheet.condition-${line.condition}`) : '',
    line.supplier,
  ];
  return (
    <div className={line.given ? 'ln given' : 'ln'}>
      <span className="ln-words">
        <SheetCell
          label={t('sheet.cellWords')}
          hand={`${line.id} words`}
          wraps
          column="words"
          value={line.words}
          revision={line.revision}
          locked={locked}
          save={(words, revision) => change(revision, { words })}
          inRow={(row) => String(row.words)}
        />
        <em>{notes.filter((note) => note !== '').join(', ')}</em>
        {line.given ? <em>{t('sheet.given', { why: line.giveWhy })}</em> : null}
      </span>
      {line.billing === 'clocked' ? (
        <span className="figure">{quantityText(line.charged, line.unit, writing)}</span>
      ) : (
        <SheetCell
          label={t('sheet.cellQuantity', { words: line.words })}
          hand={`${line.id} quantity`}
          column="quantity"
          value={quantityOf({ ...line })}
          revision={line.revision}
          locked={locked}
          figure
          save={saveQuantity}
          unread={(text) =>
            unreadWords(text, writing, t('sheet.unread', { label: t('sheet.cellQuantity', { words: line.words }) }))
          }
          inRow={quantityOf}
        />
      )}
      <SheetCell
        label={t('sheet.cellPrice', { words: line.words })}
        hand={`${line.id} price`}
        column="price"
        value={amountText(line.unitPrice, writing)}
        revision={line.revision}
        locked={locked || line.unitPrice === null}
        figure
        save={(text, revision) => {
          const unitPrice = readAmount(text, writing);
          return unitPrice === null || unitPrice < 0 ? null : change(revision, { unitPrice });
        }}
        inRow={(row) => amountText(Number(row.unitPrice), writing)}
      />
      <span className="figure">{amountText(line.amount, writing)}</span>
      {locked ? null : (
        <span className="ln-acts">
          <button
            type="button"
            className="link small"
            aria-expanded={more}
            aria-label={t('edit.moreOf', { words: line.words })}
            onClick={() => setMore(!more)}
          >
            {t('edit.more')}
          </button>
          <button
            type="button"
            className="link small"
            onClick={async () => {
              const { id, given, giveWhy: why } = line;
              const turned = { given: !given, why: given ? '' : t('sheet.giveWhy') };
              const answer = await give.run({ id, revision: line.revision, ...turned });
              if (!answer.ok) return;
              const { revision } = answer.output;
              remember({ at: null, words: line.words, run: () => save('line.give', { id, revision, given, why }) });
            }}
          >
            {t(line.given ? 'sheet.charge' : 'sheet.give')}
          </button>
          <button
            type="button"
            className="link small"
            aria-label={t('sheet.takeOutLine', { words: line.words })}
            onClick={async () => {
              const answer = await takeOut.run({ id: line.id, revision: line.revision });
              if (!answer.ok) return;
              const { id, revision } = answer.output;
              remember({ at: line.jobId, words: line.words, run: () => save('line.putBack', { id, revision }) });
            }}
          >
            {t('sheet.takeOut')}
          </button>
        </span>
      )}
      {more && !locked ? <LineMore order={order} line={line} /> : null}
      <Wrong error={takeOut.error ?? give.error} />
    </div>
  );
}

function hoursText(line: Line, writing: Parameters<typeof quantityText>[2]): string {
  return line.people.map((one) => quantityText(one.hours, 'h', writing)).join(', ');
}
