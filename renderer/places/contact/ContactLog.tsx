import { useState } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { hrefOf } from '../../frame/router.ts';
import { Button } from '../../parts/Button.tsx';
import { useNow } from '../../state/now.ts';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { amountText } from '../../words/figures.ts';
import { t, tMaybe } from '../../words/t.ts';
import { civilText, nearText, timeText } from '../../words/times.ts';
import { WriteDown } from './WriteDown.tsx';
import './contact.css';

type Row = OutputOf<'message.list'>['rows'][number];

const FEW = 4;
/** Kinds whose words are in their name already. */
const NAMED: readonly Row['kind'][] = ['paper', 'statement'];

interface Props {
  readonly customerId: string;
  /** Only of this order. */
  readonly orderId?: string;
}

/** Who told whom what, when and how: messages, calls, papers that were sent, reminders. */
export function ContactLog({ customerId, orderId }: Props) {
  const writing = useWriting();
  const now = useNow(60_000);
  const [all, showAll] = useState(false);
  const [open, setOpen] = useState(false);
  const { data, error } = useAsk('message.list', orderId === undefined ? { customerId } : { orderId });
  const rows = data?.rows ?? [];
  return (
    <>
      {error && !data ? <p role="alert">{errorSentence(error, writing)}</p> : null}
      {data !== undefined && rows.length === 0 ? <p className="ink-2">{t('contact.none')}</p> : null}
      <ul className="contact-rows">
        {(all ? rows : rows.slice(0, FEW)).map((row) => (
          <li key={row.kind + row.id}>
            <span className="ink-2">{nearOf(row.at, writing, now)}</span>
            <span>
              <b className="semi">{whatOf(row, writing)}</b> {NAMED.includes(row.kind) ? null : row.words}{' '}
              <span className="small ink-2">
                {row.by}
                {row.orderId === null || orderId !== undefined ? null : (
                  <>
                    , <a href={hrefOf('orders', row.orderId)}>{t('customers.order', { number: row.number ?? '' })}</a>
                  </>
                )}
              </span>
            </span>
          </li>
        ))}
      </ul>
      <div className="contact-acts">
        {all || rows.length <= FEW ? null : (
          <button type="button" className="link" onClick={() => showAll(true)}>
            {t('contact.all', { n: rows.length })}
          </button>
        )}
        {open ? null : (
          <Button small onClick={() => setOpen(true)}>
            {t('contact.writeDown')}
          </Button>
        )}
      </div>
      {open ? <WriteDown customerId={customerId} orderId={orderId ?? null} onDone={() => setOpen(false)} /> : null}
    </>
  );
}

type Writing = ReturnType<typeof useWriting>;

/** With the time of the day, also where the day is named. */
function nearOf(at: number, writing: Writing, now: number): string {
  const near = nearText(at, writing, now);
  const time = timeText(at, writing);
  return near.includes(time) ? near : `${near}, ${time}`;
}

/** What was done with a statement, by its key. */
const STATEMENT_WORDS: Readonly<Record<string, 'contact.statementMade' | 'contact.statementMail'>> = {
  made: 'contact.statementMade',
  mail: 'contact.statementMail',
};

function whatOf(row: Row, writing: Writing): string {
  if (row.kind === 'paper')
    return t('contact.paper', {
      paper: tMaybe(`frame.paper-${row.about}`) ?? row.about,
      number: row.words,
      how: row.way,
    });
  if (row.kind === 'statement')
    return t(STATEMENT_WORDS[row.about] ?? 'contact.statementSent', {
      day: civilText(row.words, writing),
      how: row.way,
    });
  if (row.kind === 'reminder') return `${tMaybe(`reminders.did-${row.about}`) ?? row.about}:`;
  const way = tMaybe(`contact.way-${row.way}`) ?? tMaybe(`decision.way-${row.way}`) ?? row.way;
  if (row.kind === 'answer') {
    if (row.about === 'no') return t('contact.saidNo', { way });
    return row.upTo === null
      ? t('contact.saidYesUnseen', { way })
      : t('contact.saidYes', { way, sum: amountText(row.upTo, writing) });
  }
  if (row.direction === 'in') return t('contact.fromThem', { way });
  const silent = row.kind === 'try' || row.reached === false;
  return silent && (row.way === 'phone' || row.way === 'person') ? t('contact.nobody', { way }) : `${way}:`;
}
