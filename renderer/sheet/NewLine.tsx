import { useRef, useState } from 'react';
import { LINE_KINDS } from '../../core/money/line.ts';
import { useShop, useWriting } from '../state/shop.ts';
import { useDo } from '../state/use-do.ts';
import { amountText, readAmount } from '../words/figures.ts';
import { t } from '../words/t.ts';
import type { Job, Line } from './order.ts';
import { guessKind, readQuantity, splitWords } from './read-line.ts';
import { Wrong } from './Wrong.tsx';

/** The last line of a job stands open for typing: words, a quantity, a price; what kind it is is guessed. */
export function NewLine({ job }: { readonly job: Job }) {
  const writing = useWriting();
  const rate = useShop()?.rates.find((one) => one.usual);
  const add = useDo('line.add');
  const first = useRef<HTMLInputElement>(null);
  const [words, setWords] = useState('');
  const [typed, setTyped] = useState('');
  const [price, setPrice] = useState('');
  const [chosen, setChosen] = useState<Line['kind'] | null>(null);
  const [unread, setUnread] = useState<string | null>(null);

  const split = typed === '' ? splitWords(words) : null;
  const read = readQuantity(split?.typed ?? (typed === '' ? '1' : typed));
  const kind = chosen ?? guessKind(read?.unit ?? '');
  const usual = kind === 'labour' && rate ? amountText(rate.price, writing) : '';

  const go = async () => {
    const unitPrice = readAmount(price === '' ? usual : price, writing);
    if (read === null) return setUnread(t('sheet.unread', { label: t('sheet.newQuantity') }));
    if (unitPrice === null || unitPrice < 0) return setUnread(t('sheet.unread', { label: t('sheet.newPrice') }));
    setUnread(null);
    const unit = read.unit === 'H' ? 'h' : read.unit;
    const answer = await add.run({
      jobId: job.id,
      line: { kind, words: split?.words ?? words, quantity: read.quantity, unit, unitPrice },
    });
    if (!answer.ok) return;
    setWords('');
    setTyped('');
    setPrice('');
    setChosen(null);
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
        value={words}
        aria-label={t('sheet.newWords', { letter: job.letter })}
        placeholder={t('sheet.addTo', { letter: job.letter })}
        onChange={(event) => setWords(event.target.value)}
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
          <input
            className="figure"
            value={price}
            aria-label={t('sheet.newPrice')}
            placeholder={usual === '' ? t('sheet.price') : usual}
            onChange={(event) => setPrice(event.target.value)}
          />
          <button type="submit" className="b" disabled={add.busy}>
            {t('sheet.add')}
          </button>
        </>
      )}
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
