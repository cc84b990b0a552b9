import { useDeferredValue, useRef, useState } from 'react';
import { LINE_KINDS } from '../../core/money/line.ts';
import { markupsOf, offeredPrice } from '../../core/money/offered-price.ts';
import { useSession } from '../state/session.ts';
import { useShop, useWriting } from '../state/shop.ts';
import { useAsk } from '../state/use-ask.ts';
import { useDo } from '../state/use-do.ts';
import { amountText, readAmount } from '../words/figures.ts';
import { t } from '../words/t.ts';
import { unreadWords } from '../words/unread.ts';
import type { Job, Line } from './order.ts';
import { type Part, PartHits } from './PartHits.tsx';
import { guessKind, readQuantity, splitWords } from './read-line.ts';
import { Wrong } from './Wrong.tsx';

/** The last line of a job stands open for typing: words, a quantity, a price; what kind it is is guessed. */
export function NewLine({ job }: { readonly job: Job }) {
  const writing = useWriting();
  const shop = useShop();
  const rate = shop?.rates.find((one) => one.usual);
  const owner = useSession((session) => session.person?.role === 'owner');
  const add = useDo('line.add');
  const first = useRef<HTMLInputElement>(null);
  const [words, setWords] = useState('');
  const [typed, setTyped] = useState('');
  const [price, setPrice] = useState('');
  const [cost, setCost] = useState('');
  const [chosen, setChosen] = useState<Line['kind'] | null>(null);
  const [part, setPart] = useState<Part | null>(null);
  const [unread, setUnread] = useState<string | null>(null);

  const split = typed === '' ? splitWords(words) : null;
  const read = readQuantity(split?.typed ?? (typed === '' ? '1' : typed), writing);
  const asked = useDeferredValue(part === null ? (split?.words ?? words).trim() : '');
  const onShelf = useAsk('part.list', asked.length > 1 ? { text: asked.slice(0, 60), most: 5 } : null).data?.rows ?? [];
  // A part number typed whole is that part.
  const meant = part ?? onShelf.find((one) => one.number.toLowerCase() === asked.toLowerCase()) ?? null;
  const kind = chosen ?? guessKind(meant?.unit || (read?.unit ?? ''));
  const markups = shop?.settings ? markupsOf(shop.settings) : null;
  // The cost is asked for where the shop has a markup on it, of whoever may see it.
  const asksCost = owner && meant === null && markups !== null && offeredPrice(kind, 0, markups) !== null;
  const unitCost = asksCost ? readAmount(cost, writing) : null;
  const offered = markups !== null && (unitCost ?? -1) >= 0 ? offeredPrice(kind, unitCost, markups) : null;
  const usual =
    offered !== null
      ? amountText(offered, writing)
      : meant !== null
        ? amountText(meant.price, writing)
        : kind === 'labour' && rate
          ? amountText(rate.price, writing)
          : '';

  const go = async () => {
    const unitPrice = readAmount(price === '' ? usual : price, writing);
    if (read === null)
      return setUnread(
        unreadWords(split?.typed ?? typed, writing, t('sheet.unread', { label: t('sheet.newQuantity') })),
      );
    if (asksCost && cost !== '' && (unitCost === null || unitCost < 0))
      return setUnread(t('sheet.unread', { label: t('edit.cost') }));
    if (unitPrice === null || unitPrice < 0) return setUnread(t('sheet.unread', { label: t('sheet.newPrice') }));
    setUnread(null);
    const unit = read.unit === 'H' ? 'h' : read.unit || (meant?.unit ?? '');
    const fromShelf = meant === null ? {} : { words: meant.words, partNumber: meant.number, partId: meant.id };
    const answer = await add.run({
      jobId: job.id,
      line: { kind, words: split?.words ?? words, quantity: read.quantity, unit, unitPrice, unitCost, ...fromShelf },
    });
    if (!answer.ok) return;
    setWords('');
    setTyped('');
    setPrice('');
    setCost('');
    setChosen(null);
    setPart(null);
    first.current?.focus();
  };

  return (
    <form
      className="add"
      aria-label={t('sheet.addTo', { letter: job.letter })}
      onSubmit={(event) => {
        event.preventDefault();
        void go();
      }}
    >
      <input
        ref={first}
        data-column="open"
        value={words}
        aria-label={t('sheet.newWords', { letter: job.letter })}
        placeholder={t('sheet.addTo', { letter: job.letter })}
        onChange={(event) => {
          setWords(event.target.value);
          setPart(null);
        }}
      />
      {words === '' ? null : (
        <>
          <select
            aria-label={t('sheet.newKind')}
            value={kind}
            onChange={(event) => setChosen(readKind(event.target.value))}
          >
            {LINE_KINDS.map((one) => (
              <option key={one} value={one}>
                {t(`sheet.kind-${one}`)}
              </option>
            ))}
          </select>
          <input
            className="figure"
            value={typed}
            aria-label={t('sheet.newQuantity')}
            placeholder={split?.typed ?? '1'}
            onChange={(event) => setTyped(event.target.value)}
          />
          {asksCost ? (
            <input
              className="figure"
              value={cost}
              aria-label={t('rules.newCost')}
              placeholder={t('rules.newCost')}
              onChange={(event) => setCost(event.target.value)}
            />
          ) : null}
          <input
            className={offered === null || price !== '' ? 'figure' : 'figure filled'}
            value={price}
            aria-label={
              offered === null || price !== ''
                ? t('sheet.newPrice')
                : `${t('sheet.newPrice')}, ${t('rules.fromMarkup', { cost: amountText(unitCost, writing) })}`
            }
            placeholder={usual === '' ? t('sheet.price') : usual}
            onChange={(event) => setPrice(event.target.value)}
          />
          <button type="submit" className="b" disabled={add.busy}>
            {t('sheet.add')}
          </button>
        </>
      )}
      {part === null ? (
        <PartHits
          parts={onShelf}
          onPick={(one) => {
            setPart(one);
            setWords(one.words);
            first.current?.focus();
          }}
        />
      ) : null}
      {unread === null ? null : (
        <p className="wrong" role="alert">
          {unread}
        </p>
      )}
      <Wrong error={add.error} />
    </form>
  );
}

function readKind(value: string): Line['kind'] {
  return LINE_KINDS.find((kind) => kind === value) ?? 'part';
}
