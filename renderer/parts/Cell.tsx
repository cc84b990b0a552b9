import { useEffect, useId, useLayoutEffect, useRef, useState } from 'react';
import { comboOf } from '../frame/keys.ts';
import { useWriting } from '../state/shop.ts';
import type { CallError } from '../state/transport.ts';
import { useNotSaved } from '../state/unsaved.ts';
import { errorSentence } from '../words/error-sentence.ts';
import { t } from '../words/t.ts';

/** What became of a cell's value. `meanwhile`: somebody else's value stands there now; nothing was written. */
export type CellSaved =
  | { readonly ok: true }
  | { readonly ok: false; readonly words?: string; readonly error?: CallError; readonly meanwhile?: string };

export interface CellProps {
  /** Said aloud: which cell of which line. */
  readonly label: string;
  /** As it stands in the shop. */
  readonly value: string;
  /** Saves on leaving; `over` is the person's choice to keep theirs over what somebody else wrote meanwhile. */
  readonly save: (text: string, over: boolean) => Promise<CellSaved>;
  readonly figure?: boolean;
  readonly placeholder?: string;
  readonly readOnly?: boolean;
  /** What stands there when nobody types, such as "6.2 h" for 6.2. */
  readonly rest?: string;
  /** Enter saves and goes on to the cell below of the same column, Shift Enter to the one above. */
  readonly column?: string;
  /** As one types: sums elsewhere follow. */
  readonly onTyping?: (text: string) => void;
  /** Who else is in it. */
  readonly other?: string | undefined;
  /** The hand is in it now, or has left it. */
  readonly onHand?: (held: boolean) => void;
  readonly className?: string;
  readonly list?: string;
  readonly autoFocus?: boolean;
  /** Long words go on in a second line, so that all of them can be read; Enter stays what it is. */
  readonly wraps?: boolean;
}

/** More than any cell takes, so that it is still said to be too long; no more than the browser draws at once. */
const SIGNS_MOST = 20_000;

/** One cell of the sheet: Tab next, Enter next line, Esc restores; saved on leaving; what goes wrong stands under it. */
export function Cell(props: CellProps) {
  const { label, value, save, figure = false, readOnly = false, rest } = props;
  const id = useId();
  const writing = useWriting();
  const notSaved = useNotSaved();
  const [text, setText] = useState<string | null>(null);
  const [typing, setTyping] = useState(false);
  const [refused, setRefused] = useState<Exclude<CellSaved, { ok: true }> | null>(null);
  const [seen, setSeen] = useState(value);
  const restoring = useRef(false);
  const sent = useRef<string | null>(null);
  const field = useRef<HTMLInputElement & HTMLTextAreaElement>(null);

  // The shop's own value came back: what was typed is that now.
  if (seen !== value) {
    setSeen(value);
    if (!typing && refused === null) setText(null);
  }
  const wantsFocus = props.autoFocus === true;
  useEffect(() => {
    if (wantsFocus) field.current?.focus();
  }, [wantsFocus]);

  // "6.2 h" becomes 6.2 under the caret: all of it is chosen again, so that what is typed takes its place.
  const hasRest = rest !== undefined;
  useLayoutEffect(() => {
    if (typing && hasRest) field.current?.select();
  }, [typing, hasRest]);

  const send = async (typed: string, over: boolean) => {
    sent.current = typed;
    const saved = await save(typed, over);
    setRefused(saved.ok ? null : saved);
    notSaved(saved.ok ? null : saved.error, () => void send(typed, over));
    if (!saved.ok) {
      sent.current = null;
      // The row may have come anew while it was under way; what was typed is still theirs to keep.
      setText((now) => now ?? typed);
    }
    // Where the shop writes it just as before ("6.20" stays 6.2) no new value comes to take its place.
    else
      setTimeout(() => {
        sent.current = null;
        setText((now) => (now === typed ? null : now));
      }, 300);
  };
  const leave = () => {
    setTyping(false);
    props.onHand?.(false);
    const typed = text;
    if (restoring.current || typed === null || typed === value) {
      restoring.current = false;
      if (typed === value) {
        setRefused(null);
        notSaved(null);
      }
      if (refused === null || typed === value) setText(null);
      return;
    }
    // Entered and left again while it is being saved: it is sent once.
    if (typed !== sent.current) void send(typed, false);
  };
  const onKeyDown = (event: React.KeyboardEvent<HTMLInputElement | HTMLTextAreaElement>) => {
    const combo = comboOf(event);
    if (combo === 'Esc') {
      restoring.current = true;
      setText(null);
      setRefused(null);
      notSaved(null);
      props.onTyping?.(value);
      event.currentTarget.blur();
      event.stopPropagation();
    } else if (combo === 'Enter' || combo === 'Shift+Enter') {
      event.preventDefault();
      const next = inColumn(event.currentTarget, combo === 'Enter' ? 1 : -1);
      if (next === null) event.currentTarget.blur();
      else next.focus();
      if (next instanceof HTMLInputElement || next instanceof HTMLTextAreaElement) next.select();
    }
  };

  const words = refused === null || refused.meanwhile !== undefined ? null : refusedWords(refused, writing);
  const shown = text ?? (typing ? value : (rest ?? value));
  const shared = {
    ref: field,
    className: ['cell', figure ? 'figure' : '', props.wraps ? 'text' : '', words === null ? '' : 'wrong']
      .join(' ')
      .trim(),
    'aria-label': label,
    'aria-invalid': words !== null || undefined,
    'aria-describedby': words === null ? undefined : id,
    readOnly,
    'data-untyped': text === null || undefined,
    placeholder: props.placeholder,
    value: shown,
    autoComplete: 'off',
    maxLength: SIGNS_MOST,
    'data-column': props.column,
    onFocus: () => {
      if (readOnly) return;
      setTyping(true);
      props.onHand?.(true);
    },
    onChange: (event: React.ChangeEvent<HTMLInputElement | HTMLTextAreaElement>) => {
      // A line pasted with its breaks stays one line.
      const typed = event.target.value.replace(/\s*\n\s*/g, ' ');
      setText(typed);
      props.onTyping?.(typed);
    },
    onBlur: leave,
    onKeyDown,
  };
  return (
    <span className={`cell-place ${props.className ?? ''}`}>
      {props.other === undefined ? null : <InCell name={props.other} />}
      {props.wraps ? <textarea {...shared} rows={1} /> : <input {...shared} type="text" list={props.list} />}
      {words === null ? null : (
        <span className="wrong-words" id={id} role="alert">
          {words}
        </span>
      )}
      {refused?.meanwhile === undefined ? null : (
        <Both
          yours={text ?? ''}
          theirs={refused.meanwhile}
          onKeep={() => void send(text ?? '', true)}
          onTake={() => {
            setRefused(null);
            setText(null);
          }}
        />
      )}
    </span>
  );
}

/** The cell so many lines further in the column, or the line that stands open for typing; null past either end. */
function inColumn(here: HTMLElement, step: 1 | -1): HTMLElement | null {
  const { column } = here.dataset;
  if (column === undefined) return null;
  const all = [...document.querySelectorAll<HTMLElement>(`[data-column="${column}"], [data-column="open"]`)];
  return all[all.indexOf(here) + step] ?? null;
}

/** What did not fit, as a sentence. */
export function refusedWords(
  refused: Exclude<CellSaved, { ok: true }>,
  writing: Parameters<typeof errorSentence>[1],
): string {
  if (refused.words !== undefined) return refused.words;
  return refused.error === undefined ? t('parts.notSaved') : errorSentence(refused.error, writing);
}

/** Somebody else is in it: the name stands at its edge, the value stays to be read. */
export function InCell({ name }: { readonly name: string }) {
  return (
    <span className="cell-other">
      {name}
      <span className="aloud"> {t('parts.isInIt')}</span>
    </span>
  );
}

interface BothProps {
  readonly yours: string;
  readonly theirs: string;
  readonly onKeep: () => void;
  readonly onTake: () => void;
}

/** Changed meanwhile: both values stand in the cell, the person picks; nothing is lost. */
export function Both({ yours, theirs, onKeep, onTake }: BothProps) {
  const name = (value: string) => (value === '' ? t('parts.nothing') : value);
  return (
    <span className="both" role="group" aria-label={t('errors.changed-meanwhile')}>
      <span>
        {t('parts.yours')}
        <b>{name(yours)}</b>
        <button type="button" className="button less" onClick={onKeep}>
          {t('parts.keep', { value: name(yours) })}
        </button>
      </span>
      <span>
        {t('parts.theirs')}
        <b>{name(theirs)}</b>
        <button type="button" className="button less" onClick={onTake}>
          {t('parts.take', { value: name(theirs) })}
        </button>
      </span>
    </span>
  );
}
