import { useState } from 'react';
import type { InputOf, OutputOf } from '../../../../core/contract/index.ts';
import { Field } from '../../../parts/Field.tsx';
import { useWriting } from '../../../state/shop.ts';
import { useAsk } from '../../../state/use-ask.ts';
import { quantityText } from '../../../words/figures.ts';
import { t } from '../../../words/t.ts';

export type Mend = NonNullable<InputOf<'finding.add'>['mend']>;
type BookJob = OutputOf<'jobBook.list'>['rows'][number];

interface Props {
  readonly value: Mend | null;
  readonly onChange: (mend: Mend | null) => void;
  /** What was found, in words: jobs of the book that share a word with it come first. */
  readonly about: string;
  /** The title of the job in hand, which mends nothing new. */
  readonly car: string;
}

/** Letters that a word must have to say anything. */
const LONG_ENOUGH = 4;

/** Jobs of the book by how many words they share with what was found; the earlier one stands where they share as many. */
export function likelyMends(rows: readonly BookJob[], about: string): BookJob[] {
  const words = about
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .filter((word) => word.length >= LONG_ENOUGH);
  const shared = ({ title }: BookJob) => words.filter((word) => title.toLowerCase().includes(word)).length;
  return rows.filter((row) => shared(row) > 0).sort((a, b) => shared(b) - shared(a));
}

/** What would mend it: a job of the book, or in words. No price is said here; the desk prices. */
export function MendRow({ value, onChange, about, car }: Props) {
  const writing = useWriting();
  const rows = (useAsk('jobBook.list', {}).data?.rows ?? []).filter((row) => row.version > 0 && row.title !== car);
  const [all, setAll] = useState(false);
  const likely = likelyMends(rows, about).slice(0, 2);
  const shown = all ? rows : likely;
  const own = value?.bookJobId == null ? (value?.words ?? '') : '';
  return (
    <section className="found-row mend" aria-label={t('found.mend')}>
      <h2>{t('found.mend')}</h2>
      <div className="choice-row">
        {shown.map((row) => (
          <button
            key={row.id}
            type="button"
            className="chip"
            aria-pressed={value?.bookJobId === row.id}
            onClick={() => onChange({ words: row.title, bookJobId: row.id })}
          >
            <b>{row.title}</b>
            <span>{quantityText(row.bookHours, 'h', writing)}</span>
          </button>
        ))}
        {all || rows.length === shown.length ? null : (
          <button type="button" className="chip" onClick={() => setAll(true)}>
            <b>{t(shown.length === 0 ? 'found.fromBook' : 'found.another')}</b>
          </button>
        )}
      </div>
      <Field
        label={t('found.mendWords')}
        value={own}
        maxLength={200}
        onChange={(words) => onChange(words.trim() === '' ? null : { words, bookJobId: null })}
      />
    </section>
  );
}
