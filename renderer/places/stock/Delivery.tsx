import { useId, useRef, useState } from 'react';
import { parseQuantity } from '../../../core/measure/quantity.ts';
import { useKey } from '../../frame/keys.ts';
import { goTo, hrefOf } from '../../frame/router.ts';
import { Button } from '../../parts/Button.tsx';
import { Field } from '../../parts/Field.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { useWriting } from '../../state/shop.ts';
import { useDo } from '../../state/use-do.ts';
import { amountText, quantityText, readAmount } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { unreadWords } from '../../words/unread.ts';
import { NewPrice } from './NewPrice.tsx';
import { problemAt } from './problem-at.ts';
import type { StockRow } from './StockBar.tsx';

const EMPTY = { which: '', quantity: '', cost: '' };
const nameOf = (row: StockRow) => `${row.number} ${row.words}`;

/** Goods in: part by part, and the form stays for the next one on the note. */
export function Delivery({ rows, partId }: { readonly rows: readonly StockRow[]; readonly partId: string | null }) {
  const writing = useWriting();
  const list = useId();
  const first = useRef<HTMLInputElement>(null);
  const receive = useDo('part.receive');
  const given = rows.find((row) => row.id === partId);
  const [draft, setDraft] = useState({ ...EMPTY, which: given === undefined ? '' : nameOf(given) });
  const [note, setNote] = useState('');
  const [wrong, setWrong] = useState<Partial<typeof EMPTY>>({});
  const [taken, setTaken] = useState<readonly string[]>([]);
  const typed = draft.which.trim().toLowerCase();
  const part = rows.find((row) => nameOf(row).toLowerCase() === typed || row.number.toLowerCase() === typed);
  const cost = readAmount(draft.cost, writing);
  const change = (now: Partial<typeof EMPTY>) => setDraft((was) => ({ ...was, ...now }));
  useKey('Esc', () => goTo('stock'));

  const go = async () => {
    const quantity = parseQuantity(draft.quantity, writing);
    const fits = {
      ...(part === undefined ? { which: t('stock.whichNeeded') } : {}),
      ...(quantity === null ? { quantity: unreadWords(draft.quantity, writing, t('stock.quantityUnread')) } : {}),
      ...(quantity !== null && quantity <= 0 ? { quantity: t('stock.moreThanNothing') } : {}),
      ...(cost === null || cost < 0 ? { cost: t('stock.costUnread') } : {}),
    };
    setWrong(fits);
    if (part === undefined || quantity === null || cost === null || Object.keys(fits).length > 0) return;
    const answer = await receive.run({ partId: part.id, quantity, cost, note });
    if (!answer.ok) return;
    const text = (of: number) => quantityText(of, part.unit, writing);
    const said = t('stock.taken', { quantity: text(quantity), words: part.words, onHand: text(answer.output.onHand) });
    setTaken((before) => [said, ...before]);
    setDraft(EMPTY);
    first.current?.focus();
  };

  return (
    <section aria-label={t('stock.delivery')}>
      <h2>
        {t('stock.delivery')}
        <a href={hrefOf('stock')}>{t('stock.close')}</a>
      </h2>
      <form
        className="fields"
        onSubmit={(event) => {
          event.preventDefault();
          void go();
        }}
      >
        <Field label={t('stock.note')} value={note} onChange={setNote} maxLength={200} />
        <Field
          ref={first}
          label={t('stock.which')}
          value={draft.which}
          onChange={(which) => change({ which })}
          list={list}
          error={wrong.which ?? null}
          note={part === undefined ? undefined : `${t('stock.bin')} ${part.bin}`}
          autoFocus
        />
        <datalist id={list}>
          {rows.map((row) => (
            <option key={row.id} value={nameOf(row)} />
          ))}
        </datalist>
        <div className="side-pair">
          <Field
            label={t('stock.howMany')}
            value={draft.quantity}
            onChange={(quantity) => change({ quantity })}
            inputMode="decimal"
            error={wrong.quantity ?? problemAt(receive.error, 'quantity', 'stock')}
          />
          <Field
            label={t('stock.cost')}
            value={draft.cost}
            onChange={(text) => change({ cost: text })}
            inputMode="decimal"
            error={wrong.cost ?? problemAt(receive.error, 'cost', 'stock')}
          />
        </div>
        {part?.price != null && cost !== null && cost > part.price ? (
          <p className="in-heed semi">
            {t('stock.priceCheck', { price: amountText(part.price, writing), cost: amountText(cost, writing) })}
          </p>
        ) : null}
        {part === undefined || cost === null || cost < 0 ? null : <NewPrice part={part} cost={cost} />}
        <p>
          <Button type="submit" kind="go" disabled={receive.busy}>
            {t('stock.take')}
          </Button>
        </p>
      </form>
      <NotSaved error={receive.error} onAgain={() => void receive.again()} />
      <div role="status">
        <ul className="side-said">
          {taken.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      </div>
    </section>
  );
}
