import { useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { Field } from '../../parts/Field.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { SmallForm } from '../../parts/SmallForm.tsx';
import { useDo } from '../../state/use-do.ts';
import { t } from '../../words/t.ts';
import type { Reminder } from './reminder-words.ts';

const OUTCOMES = ['booked', 'later', 'no', 'nobody', 'letter'] as const;
type Came = (typeof OUTCOMES)[number];

interface Props {
  readonly row: Reminder;
  readonly onSaid: (words: string) => void;
}

/** What came of asking; or that it is not due any more, with the reason. */
export function Outcome({ row, onSaid }: Props) {
  const attempt = useDo('reminder.try');
  const [came, setCame] = useState<Came | null>(null);
  const [askOn, setAskOn] = useState('');
  const [words, setWords] = useState('');
  const [tried, setTried] = useState(false);
  const [ends, setEnds] = useState(false);
  const { id, revision } = row;
  const go = async () => {
    setTried(true);
    if (came === null || (came === 'later' && askOn === '')) return;
    const day = came === 'later' ? askOn : null;
    const answer = await attempt.run({ id, revision, outcome: came, askOn: day, words });
    if (!answer.ok) return;
    const figures = { name: row.customer?.name ?? row.plate, what: t(`reminders.did-${came}`) };
    onSaid(t(answer.output.closed ? 'reminders.keptOver' : 'reminders.kept', figures));
  };
  return (
    <div>
      <form
        className="contact-draft"
        onSubmit={(event) => {
          event.preventDefault();
          void go();
        }}
      >
        <Choice
          label={t('reminders.call')}
          value={came}
          options={OUTCOMES.map((value) => ({ value, words: t(`reminders.did-${value}`) }))}
          onChange={setCame}
        />
        {came === 'later' ? (
          <Field
            label={t('reminders.askOn')}
            type="date"
            value={askOn}
            onChange={setAskOn}
            error={tried && askOn === '' ? t('reminders.askOnNeeded') : null}
          />
        ) : null}
        {came === 'no' && row.noes > 0 ? <p className="small">{t('reminders.twoNoes')}</p> : null}
        <Field label={t('reminders.note')} value={words} onChange={setWords} maxLength={300} />
        <div className="contact-acts">
          <Button type="submit" disabled={attempt.busy} {...(came === null ? { held: t('reminders.cameNeeded') } : {})}>
            {t('reminders.keep')}
          </Button>
          {ends ? null : (
            <button type="button" className="link" onClick={() => setEnds(true)}>
              {t('reminders.end')}
            </button>
          )}
        </div>
        <NotSaved error={attempt.error} />
      </form>
      {ends ? <End row={row} onLeave={() => setEnds(false)} /> : null}
    </div>
  );
}

/** Done with, for a reason that stays. */
export function End({
  row,
  onLeave,
}: {
  readonly row: Pick<Reminder, 'id' | 'revision'>;
  readonly onLeave: () => void;
}) {
  const close = useDo('reminder.close');
  const [why, setWhy] = useState('');
  const [tried, setTried] = useState(false);
  const go = async () => {
    setTried(true);
    if (why.trim() === '') return;
    const answer = await close.run({ id: row.id, revision: row.revision, why });
    if (answer.ok) onLeave();
  };
  return (
    <SmallForm
      big
      verb={t('reminders.endGo')}
      onSend={go}
      busy={close.busy}
      leave={{ words: t('contact.leave'), onLeave }}
      wrong={<NotSaved error={close.error} />}
    >
      <Field
        label={t('reminders.endWhy')}
        value={why}
        onChange={setWhy}
        maxLength={200}
        autoFocus
        error={tried && why.trim() === '' ? t('reminders.endWhyNeeded') : null}
      />
    </SmallForm>
  );
}
