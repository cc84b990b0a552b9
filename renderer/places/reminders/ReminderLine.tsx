import { useState } from 'react';
import { savePdf } from '../../bench/save-pdf.ts';
import { hrefOf } from '../../frame/router.ts';
import { Button } from '../../parts/Button.tsx';
import { Plate } from '../../parts/Plate.tsx';
import { WordMark } from '../../parts/WordMark.tsx';
import { refresh } from '../../state/asks.ts';
import { act, ask } from '../../state/call.ts';
import { useWriting } from '../../state/shop.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { amountText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { dayText } from '../../words/times.ts';
import { Draft } from '../contact/Draft.tsx';
import type { Way } from '../contact/ways.ts';
import { bestWords } from '../customers/answer-words.ts';
import { Outcome } from './Outcome.tsx';
import { type Reminder, whenText, whyText } from './reminder-words.ts';

interface Props {
  readonly row: Reminder;
  readonly open: boolean;
  readonly onOpen: () => void;
  readonly onSaid: (words: string) => void;
}

/** One to call: a row, and when it is open what is known, the text, the letter, and what came of it. */
export function ReminderLine({ row, open, onOpen, onSaid }: Props) {
  const writing = useWriting();
  const now = Date.now();
  const { customer } = row;
  return (
    <li className={open ? 'open' : ''}>
      <button type="button" className="reminder-row" aria-expanded={open} onClick={onOpen}>
        <span>{whenText(row, writing)}</span>
        <span>
          <b className="semi">{row.words}</b>
          <br />
          <span className="small ink-2">
            {t(`reminders.source-${row.source}`)}
            {row.amount === null ? null : `, ${t('reminders.amount', { sum: amountText(row.amount, writing) })}`}
          </span>
        </span>
        <span>
          {row.plate === '' ? null : <Plate plate={row.plate} />} {row.car}
        </span>
        <span>
          <b className="semi">{customer?.name ?? t('reminders.noCustomer')}</b>
          <br />
          <span className="small">{[customer?.phone, customer?.tellBy].filter(Boolean).join(', ')}</span>
        </span>
        <span>{row.noes === 0 ? null : <WordMark kind="heed">{t('reminders.once')}</WordMark>}</span>
      </button>
      {open ? (
        <div className="reminder-open">
          <div>
            <p>{whyText(row, writing)}</p>
            {customer?.bestPhone ? (
              <p className="semi">{t('reminders.bestPhone', { best: bestWords(customer.bestPhone, writing) })}</p>
            ) : null}
            <ul>
              {row.tries.map((one) => (
                <li key={one.at} className="small ink-2">
                  {t('reminders.lastTry', {
                    when: dayText(one.at, writing, now),
                    what: [t(`reminders.did-${one.outcome}`), one.words, one.by]
                      .filter((text) => text !== '')
                      .join(', '),
                  })}
                </li>
              ))}
            </ul>
            <p className="contact-acts">
              {customer === null ? null : <a href={hrefOf('customers', customer.id)}>{customer.name}</a>}
              <a href={hrefOf('cars', row.carId)}>{row.car}</a>
              <a href={hrefOf('today', 'book', 'car', row.carId)}>{t('reminders.bookNow')}</a>
            </p>
          </div>
          <Outcome row={row} onSaid={onSaid} />
          {customer === null ? null : <Written row={row} name={customer.name} onSaid={onSaid} />}
        </div>
      ) : null}
    </li>
  );
}

interface WrittenProps {
  readonly row: Reminder;
  readonly name: string;
  readonly onSaid: (words: string) => void;
}

/** A message or a letter in the shop's wording; either is written down as a try. */
function Written({ row, name, onSaid }: WrittenProps) {
  const writing = useWriting();
  const [writes, setWrites] = useState(false);
  const [wrong, setWrong] = useState('');
  const letter = async () => {
    const answer = await ask('reminder.letter', { id: row.id });
    if (!answer.ok) return setWrong(errorSentence(answer.error, writing));
    savePdf(answer.output.name, answer.output.base64);
    onSaid(t('reminders.letterMade', { name: answer.output.name }));
  };
  const recorded = async (way: Way) => {
    const words = t(`contact.way-${way}`);
    const answer = await act('reminder.try', { id: row.id, revision: row.revision, outcome: 'letter', words });
    refresh();
    if (!answer.ok) return setWrong(errorSentence(answer.error, writing));
    onSaid(t('reminders.kept', { name, what: t('reminders.did-letter') }));
  };
  return (
    <div className="reminder-text">
      <div className="contact-acts">
        <Button small expanded={writes} onClick={() => setWrites(!writes)}>
          {t('reminders.message')}
        </Button>
        <Button small onClick={() => void letter()}>
          {t('reminders.letter')}
        </Button>
      </div>
      {wrong === '' ? null : (
        <p role="alert" className="wrong-words">
          {wrong}
        </p>
      )}
      {writes ? <Draft about="reminder" reminderId={row.id} onRecorded={(way) => void recorded(way)} /> : null}
    </div>
  );
}
