import { useState } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { civilDateOf } from '../../../core/time/instant.ts';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { Field } from '../../parts/Field.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { SmallForm } from '../../parts/SmallForm.tsx';
import { saveText } from '../../parts/save-text.ts';
import { WordMark } from '../../parts/WordMark.tsx';
import { ask } from '../../state/call.ts';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { useDo } from '../../state/use-do.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { t } from '../../words/t.ts';
import { civilText, dayText } from '../../words/times.ts';
import { TakeOut } from './TakeOut.tsx';
import './privacy.css';

type Request = OutputOf<'privacy.list'>['rows'][number];

const WAYS = ['phone', 'message', 'mail', 'letter', 'person'] as const;
const ANSWERS = ['copy', 'corrected', 'taken-out', 'refused'] as const;

/** What somebody asks about themselves: the request with its last day, the copy, and what may go. */
export function Privacy({ id }: { readonly id: string }) {
  const writing = useWriting();
  const rows = useAsk('privacy.list', { customerId: id }).data?.rows;
  const [asks, setAsks] = useState(false);
  const [looks, setLooks] = useState(false);
  const [wrong, setWrong] = useState('');
  const copy = async (as: 'text' | 'json') => {
    const answer = await ask('privacy.copy', { customerId: id });
    if (!answer.ok) return setWrong(errorSentence(answer.error, writing));
    setWrong('');
    saveText(`${answer.output.name}.${as === 'text' ? 'txt' : 'json'}`, answer.output[as]);
  };
  if (rows === undefined) return null;
  return (
    <>
      {rows.length === 0 ? <p className="ink-2">{t('privacy.none')}</p> : null}
      {rows.map((row) => (row.answer === null ? <Open key={row.id} row={row} /> : <Done key={row.id} row={row} />))}
      <div className="contact-acts">
        <Button small onClick={() => void copy('text')}>
          {t('privacy.copy')}
        </Button>
        <Button small onClick={() => void copy('json')}>
          {t('privacy.copyData')}
        </Button>
        <Button small expanded={looks} onClick={() => setLooks(!looks)}>
          {t('privacy.look')}
        </Button>
        <span className="small ink-2">{t('privacy.looked')}</span>
      </div>
      {wrong === '' ? null : (
        <p role="alert" className="wrong-words">
          {wrong}
        </p>
      )}
      {looks ? <TakeOut id={id} onDone={() => setLooks(false)} /> : null}
      {asks ? (
        <Asks id={id} onDone={() => setAsks(false)} />
      ) : (
        <button type="button" className="link" onClick={() => setAsks(true)}>
          {t('privacy.askOpen')}
        </button>
      )}
    </>
  );
}

/** A request without an answer, with its last day. */
function Open({ row }: { readonly row: Request }) {
  const writing = useWriting();
  const answer = useDo('privacy.answer');
  const [came, setCame] = useState<(typeof ANSWERS)[number]>('copy');
  const [words, setWords] = useState('');
  const late = row.answerBy < civilDateOf(Date.now(), writing.zone);
  return (
    <SmallForm
      verb={t('privacy.answerGo')}
      onSend={() => answer.run({ id: row.id, revision: row.revision, answer: came, words })}
      busy={answer.busy}
      look="privacy-open"
      wrong={<NotSaved error={answer.error} />}
    >
      <p>
        {t('privacy.open', {
          ...{ day: civilText(row.askedOn, writing), way: t(`contact.way-${row.way}`) },
          by: civilText(row.answerBy, writing),
        })}{' '}
        {late ? <WordMark kind="stop">{t('privacy.late')}</WordMark> : null} {row.words}
      </p>
      <p className="small ink-2">{t('privacy.correct')}</p>
      <Choice
        label={t('privacy.answer')}
        value={came}
        options={ANSWERS.map((value) => ({ value, words: t(`privacy.answer-${value}`) }))}
        onChange={setCame}
      />
      <Field label={t('privacy.answerWords')} value={words} onChange={setWords} maxLength={1000} />
    </SmallForm>
  );
}

function Done({ row }: { readonly row: Request }) {
  const writing = useWriting();
  const figures = { day: civilText(row.askedOn, writing), why: row.answerWords };
  return (
    <p className="small ink-2">
      {t(`privacy.done-${row.answer ?? 'copy'}`, {
        ...figures,
        answered: dayText(row.answeredAt ?? 0, writing, Date.now()),
      })}
    </p>
  );
}

/** Writes a request down: when it came, how, and what they asked. */
function Asks({ id, onDone }: { readonly id: string; readonly onDone: () => void }) {
  const writing = useWriting();
  const asked = useDo('privacy.ask');
  const today = civilDateOf(Date.now(), writing.zone);
  const [askedOn, setAskedOn] = useState(today);
  const [way, setWay] = useState<(typeof WAYS)[number]>('message');
  const [words, setWords] = useState('');
  const wrong = askedOn === '' || askedOn > today;
  const go = async () => {
    if (wrong) return;
    if ((await asked.run({ customerId: id, askedOn, way, words })).ok) onDone();
  };
  return (
    <SmallForm
      verb={t('privacy.askGo')}
      onSend={go}
      busy={asked.busy}
      leave={{ words: t('privacy.leave'), onLeave: onDone }}
      wrong={<NotSaved error={asked.error} />}
    >
      <Field
        label={t('privacy.askedOn')}
        type="date"
        past
        value={askedOn}
        onChange={setAskedOn}
        autoFocus
        error={wrong ? t('privacy.askedOnWrong') : null}
      />
      <Choice
        label={t('privacy.how')}
        value={way}
        options={WAYS.map((value) => ({ value, words: t(`contact.way-${value}`) }))}
        onChange={setWay}
      />
      <Field label={t('privacy.words')} value={words} onChange={setWords} maxLength={1000} />
    </SmallForm>
  );
}
