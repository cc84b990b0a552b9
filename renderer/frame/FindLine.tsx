import { useDeferredValue, useEffect, useId, useRef, useState } from 'react';
import type { OutputOf } from '../../core/contract/index.ts';
import { openPaper } from '../state/transport.ts';
import { useAsk } from '../state/use-ask.ts';
import { errorSentence } from '../words/error-sentence.ts';
import { t, tMaybe } from '../words/t.ts';
import { comboOf, useKey } from './keys.ts';
import { goTo } from './router.ts';

type Hit = Omit<OutputOf<'find.line'>['hits'][number], 'open'>;

/** Each hit, and right under it what is open of it. */
function rowsOf(found: OutputOf<'find.line'> | undefined): Hit[] {
  return (found?.hits ?? []).flatMap(({ open, ...hit }) => [
    hit,
    ...open.map(({ id, number, car }) => ({
      ...{ kind: 'order' as const, id, headline: `${number}`, by: 'open' },
      detail: car === '' ? hit.headline : car,
    })),
  ]);
}

/** What kind of thing it is, and which of its fields answered where that is not the first one. */
function kindWords(hit: Hit): string {
  if (hit.kind === 'paper') return tMaybe(`frame.paper-${hit.by}`) ?? t('frame.kind-paper');
  if (hit.by === 'VIN') return t('frame.carByVin');
  if (hit.by === 'phone') return t('frame.customerByPhone');
  if (hit.by === 'open') return t('frame.orderOpen');
  if (hit.by === 'complaint') return t('frame.orderByWords');
  return t(`frame.kind-${hit.kind}`);
}

function open(hit: Hit): void {
  if (hit.kind === 'car') goTo('cars', hit.id);
  else if (hit.kind === 'customer') goTo('customers', hit.id);
  else if (hit.kind === 'order') goTo('orders', hit.id);
  else if (hit.kind === 'part') goTo('stock', hit.id);
  else openPaper(hit.id);
}

/** One line that finds everything, best match first, the kind of thing named on each line. */
export function FindLine() {
  const [text, setText] = useState('');
  const [at, setAt] = useState(0);
  const [shut, setShut] = useState(true);
  /** Enter came before the answer did: what stood there then. */
  const [early, setEarly] = useState<string | null>(null);
  const field = useRef<HTMLInputElement>(null);
  const list = useId();
  const asked = useDeferredValue(text.trim());
  const { data: found, error } = useAsk('find.line', asked === '' ? null : { text: asked });
  const hits = rowsOf(found);
  const shown = !shut && asked !== '' && (found !== undefined || error !== null);

  const focus = () => field.current?.select();
  useKey('/', focus);
  useKey('Ctrl+K', focus);
  useEffect(() => {
    if (shown) document.getElementById(`${list}-${at}`)?.scrollIntoView({ block: 'nearest' });
  }, [shown, at, list]);

  const take = (hit: Hit | undefined) => {
    if (hit === undefined) return;
    setShut(true);
    setText('');
    setEarly(null);
    field.current?.blur();
    open(hit);
  };
  const answered = found !== undefined && asked === text.trim();
  // A fast hand has its Enter down before the answer is here: the best hit of what it typed is meant, not of a piece of it.
  const due = early !== null && answered && early === asked;
  useEffect(() => {
    if (!due) return;
    setEarly(null);
    take(hits[0]);
  });
  const onKeyDown = (event: React.KeyboardEvent) => {
    const combo = comboOf(event);
    const step = combo === 'ArrowDown' ? 1 : combo === 'ArrowUp' ? -1 : 0;
    if (step !== 0 && hits.length > 0) setAt((at + step + hits.length) % hits.length);
    else if (combo === 'Enter') answered ? take(hits[at]) : setEarly(text.trim());
    else if (combo === 'Esc') {
      setEarly(null);
      setShut(true);
      if (shut || text === '') field.current?.blur();
    } else return;
    event.preventDefault();
  };

  return (
    <search className="find">
      <label className="find-field">
        <svg viewBox="0 0 18 18" fill="none" stroke="var(--ink-2)" strokeWidth="2" aria-hidden="true">
          <circle cx="7.5" cy="7.5" r="5.5" />
          <path d="M12 12l5 5" />
        </svg>
        <span className="aloud">{t('frame.find')}</span>
        <input
          ref={field}
          role="combobox"
          aria-expanded={shown}
          aria-controls={shown ? list : undefined}
          aria-autocomplete="list"
          aria-activedescendant={shown && hits.length > 0 ? `${list}-${at}` : undefined}
          autoComplete="off"
          spellCheck={false}
          maxLength={60}
          placeholder={t('frame.find')}
          value={text}
          onChange={(event) => {
            setText(event.target.value);
            setEarly(null);
            setAt(0);
            setShut(false);
          }}
          onKeyDown={onKeyDown}
          onBlur={() => {
            setShut(true);
            setEarly(null);
          }}
          onFocus={() => setShut(false)}
        />
        <span className="key" aria-hidden="true">
          /
        </span>
      </label>
      {shown ? (
        <div className="find-hits">
          {hits.length === 0 ? (
            <p className="find-none" role="status">
              {found === undefined && error !== null ? errorSentence(error) : t('frame.findNone', { text: asked })}
            </p>
          ) : null}
          <div role="listbox" id={list} aria-label={t('frame.findHits')}>
            {hits.map((hit, i) => (
              <div
                key={`${hit.kind} ${hit.id} ${hit.by}`}
                id={`${list}-${i}`}
                className={hit.by === 'open' ? 'find-hit find-open' : 'find-hit'}
                role="option"
                tabIndex={-1}
                aria-selected={i === at}
                onMouseDown={(event) => {
                  event.preventDefault();
                  take(hit);
                }}
              >
                <span className="small ink-2">{kindWords(hit)}</span>
                <b className="semi">{hit.headline}</b>
                <span className="small ink-2">{hit.detail}</span>
              </div>
            ))}
          </div>
        </div>
      ) : null}
    </search>
  );
}
