import type { ReactNode } from 'react';
import type { InputOf } from '../../../core/contract/index.ts';
import { parseQuantity } from '../../../core/measure/quantity.ts';
import { Cell } from '../../parts/Cell.tsx';
import { act, ask } from '../../state/call.ts';
import { useWriting } from '../../state/shop.ts';
import { amountText, quantityText, readAmount, type Writing } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { unreadWords } from '../../words/unread.ts';
import { cellSaver } from '../shop/cell-saver.ts';
import { problemAt } from './problem-at.ts';
import type { StockRow } from './StockBar.tsx';

type Change = InputOf<'part.change'>['change'];
const QUANTITIES = ['keepAtLeast', 'keepAtMost', 'pack'] as const;
type Quantity = (typeof QUANTITIES)[number];
type Name = 'words' | 'number' | 'bin' | 'price' | Quantity;
const isQuantity = (name: Name): name is Quantity => QUANTITIES.some((one) => one === name);

const LABEL = {
  words: 'stock.words_',
  number: 'stock.number',
  bin: 'stock.bin',
  price: 'stock.price',
  keepAtLeast: 'stock.keepAtLeast',
  keepAtMost: 'stock.keepAtMost',
  pack: 'stock.pack',
} as const;

/** A name and what stands for it. */
export function Fact({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}

function shown(row: StockRow, name: Name, writing: Writing): string {
  if (name === 'price') return amountText(row.price, writing);
  if (!isQuantity(name)) return row[name];
  const quantity = row[name];
  return quantity === null ? '' : quantityText(quantity, '', writing);
}

/** A quantity with its unit, where it stands without being typed in. */
const rest = (row: StockRow, name: Quantity, writing: Writing): string => {
  const quantity = row[name];
  return quantity === null ? '' : quantityText(quantity, row.unit, writing);
};

function read(text: string, name: Name, writing: Writing): Change | null {
  if (name === 'price') {
    const price = readAmount(text, writing);
    return price === null || price < 0 ? null : { price };
  }
  if (isQuantity(name)) {
    // The most and the pack may be left empty: then to the least, in any quantity.
    if (name !== 'keepAtLeast' && text.trim() === '') return { [name]: null };
    const quantity = parseQuantity(text, writing);
    return quantity === null || quantity < (name === 'keepAtLeast' ? 0 : 1) ? null : { [name]: quantity };
  }
  return name !== 'bin' && text.trim() === '' ? null : { [name]: text };
}

const wrong = (name: Name) =>
  t(name === 'price' ? 'stock.priceUnread' : isQuantity(name) ? 'stock.quantityUnread' : 'stock.needed');

async function readPart({ id, number }: StockRow) {
  const answer = await ask('stock.get', { text: number });
  if (!answer.ok) return answer;
  const output = answer.output.rows.find((row) => row.id === id);
  return output === undefined
    ? ({ ok: false, error: { code: 'not-found', what: 'part', id } } as const)
    : ({ ok: true, output } as const);
}

interface Props {
  readonly row: StockRow;
  readonly name: Name;
  readonly mayChange: boolean;
}

/** One cell of a part; it saves on leaving. */
export function PartCell({ row, name, mayChange }: Props) {
  const writing = useWriting();
  const label = t(LABEL[name]);
  return (
    <Fact name={label}>
      <Cell
        label={label}
        value={shown(row, name, writing)}
        {...(isQuantity(name) ? { rest: rest(row, name, writing) } : {})}
        readOnly={!mayChange}
        save={cellSaver<StockRow, Change>({
          row,
          show: (one) => shown(one, name, writing),
          read: (text) => read(text, name, writing),
          wrong: isQuantity(name) ? (text) => unreadWords(text, writing, wrong(name)) : wrong(name),
          send: (one, change) => act('part.change', { id: one.id, revision: one.revision, change }),
          fresh: () => readPart(row),
          say: (error) => problemAt(error, 'number', 'stock') ?? problemAt(error, 'change', 'stock'),
        })}
      />
    </Fact>
  );
}
