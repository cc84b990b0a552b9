import { useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { Field } from '../../parts/Field.tsx';
import { useWriting } from '../../state/shop.ts';
import { t } from '../../words/t.ts';
import { unreadWords } from '../../words/unread.ts';
import { emptyItem, type ItemDraft, itemWrong, type ListDraft, listOf } from './check-list-draft.ts';

const KINDS = ['walk-round', 'final'] as const;

interface Props {
  readonly begin: ListDraft;
  readonly busy: boolean;
  readonly onLeave: () => void;
  readonly onKeep: (fields: NonNullable<ReturnType<typeof listOf>>) => Promise<void>;
  readonly onTakeOut?: () => void;
}

/** A list as it is written: its title, for when, and its items with what is measured there. */
export function CheckListForm({ begin, busy, onLeave, onKeep, onTakeOut }: Props) {
  const writing = useWriting();
  const [draft, setDraft] = useState(begin);
  const [tried, setTried] = useState(false);
  const change = (part: Partial<ListDraft>) => setDraft((was) => ({ ...was, ...part }));
  const { title, kind, items } = draft;
  const fields = listOf(draft, writing);
  const put = (key: number, part: Partial<ItemDraft>) =>
    change({ items: items.map((item) => (item.key === key ? { ...item, ...part } : item)) });
  return (
    <form
      className="shop-list"
      onSubmit={(event) => {
        event.preventDefault();
        setTried(true);
        if (fields !== null) void onKeep(fields);
      }}
    >
      <Field
        label={t('tools.listTitle')}
        value={title}
        onChange={(text) => change({ title: text })}
        maxLength={120}
        error={tried && title.trim() === '' ? t('tools.titleNeeded') : null}
      />
      <Choice
        label={t('tools.kind')}
        value={kind}
        options={KINDS.map((value) => ({ value, words: t(`tools.kind-${value}`) }))}
        onChange={(next) => change({ kind: next })}
      />
      {items.map((item, at) => (
        <Item
          key={item.key}
          item={item}
          n={at + 1}
          wrong={tried ? itemWrong(item, writing) : null}
          onChange={(part) => put(item.key, part)}
        />
      ))}
      <div>
        <Button
          small
          onClick={() => change({ items: [...items, emptyItem(1 + Math.max(-1, ...items.map((item) => item.key)))] })}
        >
          {t('tools.itemAdd')}
        </Button>
      </div>
      {tried && fields === null ? (
        <p className="wrong-words" role="alert">
          {t('tools.listWrong')}
        </p>
      ) : null}
      <div className="contact-acts">
        <Button type="submit" disabled={busy}>
          {t('tools.keepList')}
        </Button>
        <Button onClick={onLeave}>{t('contact.leave')}</Button>
        {onTakeOut === undefined ? null : (
          <Button disabled={busy} onClick={onTakeOut}>
            {t('tools.listOut')}
          </Button>
        )}
      </div>
    </form>
  );
}

interface ItemProps {
  readonly item: ItemDraft;
  readonly n: number;
  readonly wrong: ReturnType<typeof itemWrong>;
  readonly onChange: (part: Partial<ItemDraft>) => void;
}

function Item({ item, n, wrong, onChange }: ItemProps) {
  const writing = useWriting();
  const figure = (field: 'least' | 'most', label: string) => (
    <Field
      label={label}
      value={item[field]}
      onChange={(text) => onChange({ [field]: text })}
      inputMode="decimal"
      error={wrong === field ? unreadWords(item[field], writing, t('bench.noFigure')) : null}
    />
  );
  return (
    <fieldset>
      <legend className="small ink-2">{t('tools.item', { n })}</legend>
      <div className="shop-person">
        <Field
          label={t('tools.itemWords')}
          value={item.words}
          onChange={(words) => onChange({ words })}
          maxLength={120}
          error={wrong === 'words' ? t('tools.itemNeeded') : null}
        />
        <Field label={t('tools.place')} value={item.place} onChange={(place) => onChange({ place })} maxLength={60} />
        <Field label={t('tools.what')} value={item.what} onChange={(what) => onChange({ what })} maxLength={80} />
        {item.what.trim() === '' ? null : (
          <>
            <Field label={t('found.unit')} value={item.unit} onChange={(unit) => onChange({ unit })} maxLength={16} />
            {figure('least', t('found.atLeast'))}
            {figure('most', t('found.atMost'))}
            <Field
              label={t('found.limitSource')}
              value={item.source}
              onChange={(source) => onChange({ source })}
              maxLength={200}
            />
          </>
        )}
      </div>
    </fieldset>
  );
}
