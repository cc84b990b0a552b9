import { useState } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { hrefOf } from '../../frame/router.ts';
import { Button } from '../../parts/Button.tsx';
import { Field } from '../../parts/Field.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { useWriting } from '../../state/shop.ts';
import { useDo } from '../../state/use-do.ts';
import { quantityText, readAmount } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { civilText } from '../../words/times.ts';
import type { StockRow } from './StockBar.tsx';

type Awaited = OutputOf<'stock.get'>['onTheWay'][number];

/** What to buy, so that what is kept is there again. */
export function BuyNext({ rows }: { readonly rows: readonly StockRow[] }) {
  const writing = useWriting();
  const [said, setSaid] = useState('');
  const short = rows.filter((row) => row.buy > 0);
  const lines = short.map((row) => `${row.number}\t${row.words}\t${quantityText(row.buy, row.unit, writing)}`);
  const copy = () =>
    navigator.clipboard.writeText(lines.join('\n')).then(
      () => setSaid(t('stock.copied')),
      () => setSaid(t('stock.notCopied')),
    );
  return (
    <section aria-label={t('stock.buyNext')}>
      <h2>
        {t('stock.buyNext')} <span>{short.length}</span>
      </h2>
      <p className="small ink-2">{short.length === 0 ? t('stock.buyNothing') : t('stock.buyWords')}</p>
      <ul className="side-rows">
        {short.map((row) => (
          <li key={row.id}>
            <a href={hrefOf('stock', row.id)}>{row.words}</a>
            <span className="figure">{quantityText(row.buy, row.unit, writing)}</span>
            <span className="small ink-2">{row.number}</span>
          </li>
        ))}
      </ul>
      {short.length === 0 ? null : (
        <p>
          <Button onClick={() => void copy()}>{t('stock.copyList')}</Button>{' '}
          <span className="small ink-2" role="status">
            {said}
          </span>
        </p>
      )}
    </section>
  );
}

/** What was ordered for a line and has not come; it is said here that it came. */
export function OnTheWay({ rows, mayChange }: { readonly rows: readonly Awaited[]; readonly mayChange: boolean }) {
  const [open, setOpen] = useState<string | null>(null);
  return (
    <section aria-label={t('stock.theWay')}>
      <h2>
        {t('stock.theWay')} <span>{rows.length}</span>
      </h2>
      {rows.length === 0 ? <p className="small ink-2">{t('stock.wayNothing')}</p> : null}
      <ul className="side-rows">
        {rows.map((row) => (
          <li key={row.id}>
            <AwaitedRow
              row={row}
              open={row.id === open}
              onTurn={mayChange ? () => setOpen(row.id === open ? null : row.id) : null}
            />
          </li>
        ))}
      </ul>
    </section>
  );
}

interface RowProps {
  readonly row: Awaited;
  readonly open: boolean;
  readonly onTurn: (() => void) | null;
}

function AwaitedRow({ row, open, onTurn }: RowProps) {
  const writing = useWriting();
  const day = row.dueOn === null ? null : civilText(row.dueOn, writing);
  return (
    <>
      <span>
        <b>{row.words}</b>, {quantityText(row.quantity, row.unit, writing)}
      </span>
      <span className={row.late ? 'figure in-stop semi' : 'figure'}>
        {day === null ? t('stock.noDay') : t(row.late ? 'stock.wasDue' : 'stock.due', { day })}
      </span>
      <span className="small ink-2">
        {row.supplier}, <a href={hrefOf('orders', row.orderId)}>{t('stock.wayFor', { number: row.orderNumber })}</a>
        {row.reference === '' ? null : `, ${row.reference}`}
      </span>
      {onTurn === null ? null : (
        <button
          type="button"
          className="link small"
          aria-expanded={open}
          aria-label={t('stock.cameWords', { words: row.words })}
          onClick={onTurn}
        >
          {t('stock.came')}
        </button>
      )}
      {open && onTurn !== null ? <Came id={row.id} onDone={onTurn} /> : null}
    </>
  );
}

function Came({ id, onDone }: { readonly id: string; readonly onDone: () => void }) {
  const writing = useWriting();
  const arrive = useDo('awaited.arrive');
  const [cost, setCost] = useState('');
  const [wrong, setWrong] = useState<string | null>(null);
  const go = async () => {
    const read = cost.trim() === '' ? null : readAmount(cost, writing);
    if (cost.trim() !== '' && (read === null || read < 0)) return setWrong(t('stock.costUnread'));
    setWrong(null);
    if ((await arrive.run({ id, cost: read })).ok) onDone();
  };
  return (
    <form
      className="side-form"
      onSubmit={(event) => {
        event.preventDefault();
        void go();
      }}
    >
      <Field label={t('stock.costWhole')} value={cost} onChange={setCost} error={wrong} inputMode="decimal" autoFocus />
      <Button type="submit" disabled={arrive.busy}>
        {t('stock.came')}
      </Button>
      <NotSaved error={arrive.error} />
    </form>
  );
}
