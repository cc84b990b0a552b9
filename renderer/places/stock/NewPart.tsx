import { useState } from 'react';
import { parseQuantity } from '../../../core/measure/quantity.ts';
import { markupsOf, offeredPrice } from '../../../core/money/offered-price.ts';
import { useKey } from '../../frame/keys.ts';
import { goTo, hrefOf } from '../../frame/router.ts';
import { Button } from '../../parts/Button.tsx';
import { Field } from '../../parts/Field.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { Tick } from '../../parts/Tick.tsx';
import { useShop, useWriting } from '../../state/shop.ts';
import { useDo } from '../../state/use-do.ts';
import { amountText, readAmount } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { unreadWords } from '../../words/unread.ts';
import { problemAt } from './problem-at.ts';

const EMPTY = { number: '', words: '', bin: '', unit: '', price: '', cost: '', keepAtLeast: '0', onHand: '0' };
type Draft = typeof EMPTY;

/** A part that was not in stock before. */
export function NewPart() {
  const writing = useWriting();
  const add = useDo('part.add');
  const [draft, setDraft] = useState<Draft>(EMPTY);
  const [oneTime, setOneTime] = useState(false);
  const [wrong, setWrong] = useState<Partial<Draft>>({});
  useKey('Esc', () => goTo('stock'));

  const settings = useShop()?.settings;
  const cost = readAmount(draft.cost, writing);
  const offered = settings && cost !== null && cost >= 0 ? offeredPrice('part', cost, markupsOf(settings)) : null;
  const shown = { ...draft, price: draft.price === '' ? amountText(offered, writing) : draft.price };

  const go = async () => {
    const price = readAmount(shown.price, writing);
    const keepAtLeast = parseQuantity(draft.keepAtLeast, writing);
    const onHand = parseQuantity(draft.onHand, writing);
    const fits: Partial<Draft> = {
      ...(draft.number.trim() === '' ? { number: t('stock.needed') } : {}),
      ...(draft.words.trim() === '' ? { words: t('stock.needed') } : {}),
      ...(price === null || price < 0 ? { price: t('stock.priceUnread') } : {}),
      ...(cost === null || cost < 0 ? { cost: t('stock.costUnread') } : {}),
      ...(keepAtLeast === null || keepAtLeast < 0
        ? { keepAtLeast: unreadWords(draft.keepAtLeast, writing, t('stock.quantityUnread')) }
        : {}),
      ...(onHand === null || onHand < 0
        ? { onHand: unreadWords(draft.onHand, writing, t('stock.quantityUnread')) }
        : {}),
    };
    setWrong(fits);
    if (price === null || cost === null || keepAtLeast === null || onHand === null || Object.keys(fits).length > 0)
      return;
    const { number, words, bin, unit } = draft;
    const answer = await add.run({ number, words, bin, unit, price, cost, keepAtLeast, onHand, oneTime });
    if (answer.ok) goTo('stock', answer.output.id);
  };

  const field = (name: keyof Draft, label: string, more: { decimal?: boolean; most?: number; hint?: string } = {}) => (
    <Field
      label={label}
      value={shown[name]}
      filledFrom={name === 'price' && draft.price === '' && offered !== null ? t('rules.markupSource') : null}
      onChange={(text) => setDraft((was) => ({ ...was, [name]: text }))}
      error={wrong[name] ?? problemAt(add.error, name, 'stock')}
      autoFocus={name === 'number'}
      {...(more.most === undefined ? {} : { maxLength: more.most })}
      {...(more.decimal ? { inputMode: 'decimal' } : {})}
      {...(more.hint === undefined ? {} : { placeholder: more.hint })}
    />
  );
  return (
    <section aria-label={t('stock.newTitle')}>
      <h2>
        {t('stock.newTitle')}
        <a href={hrefOf('stock')}>{t('stock.close')}</a>
      </h2>
      <form
        className="fields"
        onSubmit={(event) => {
          event.preventDefault();
          void go();
        }}
      >
        {field('number', t('stock.number'), { most: 40 })}
        {field('words', t('stock.words_'), { most: 200 })}
        <div className="side-pair">
          {field('bin', t('stock.bin'), { most: 20 })}
          {field('unit', t('stock.unit'), { most: 8, hint: t('stock.unitHint') })}
          {field('price', t('stock.price'), { decimal: true })}
          {field('cost', t('stock.costNow'), { decimal: true })}
          {field('onHand', t('stock.onHandNow'), { decimal: true })}
          {field('keepAtLeast', t('stock.keepAtLeast'), { decimal: true })}
        </div>
        <Tick ticked={oneTime} onTick={setOneTime}>
          {t('stock.oneTimeTick')}
        </Tick>
        <p>
          <Button type="submit" kind="go" disabled={add.busy}>
            {t('stock.keepIt')}
          </Button>
        </p>
      </form>
      <NotSaved error={add.error} onAgain={() => void add.again()} />
    </section>
  );
}
