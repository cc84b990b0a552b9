import { useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Field } from '../../parts/Field.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { useWriting } from '../../state/shop.ts';
import { useDo } from '../../state/use-do.ts';
import { t, tMaybe } from '../../words/t.ts';
import { civilText } from '../../words/times.ts';
import { readMileageText } from '../book-in/draft.ts';
import { End } from '../reminders/Outcome.tsx';
import { type Reminder, whenText, whyText } from '../reminders/reminder-words.ts';

interface Props {
  readonly carId: string;
  readonly unit: 'km' | 'mi';
  readonly reminders: readonly Reminder[];
}

const FEW_ENDED = 3;

/** What the owner is to be reminded of, soonest first, what became of it, and something new. */
export function Ahead({ carId, unit, reminders }: Props) {
  const writing = useWriting();
  const [ends, setEnds] = useState<string | null>(null);
  const open = reminders
    .filter((one) => one.closedAt === null)
    .toSorted((a, b) => (a.on ?? '9').localeCompare(b.on ?? '9'));
  const ended = reminders.filter((one) => one.closedAt !== null).slice(0, FEW_ENDED);
  return (
    <>
      {open.length === 0 ? <p className="ink-2">{t('reminders.nothingAhead')}</p> : null}
      <ul className="car-ahead">
        {open.map((one) => (
          <li key={one.id}>
            <span>{whenText(one, writing)}</span>
            <span>
              <b className="semi">{one.words}</b>{' '}
              <span className="small ink-2">
                {[
                  t(`reminders.source-${one.source}`),
                  whyText(one, writing),
                  one.noes > 0 ? t('reminders.once') : '',
                  one.askOn === null ? '' : t('cars.askAgain', { day: civilText(one.askOn, writing) }),
                ]
                  .filter((part) => part !== '')
                  .join('; ')}
              </span>
              {ends === one.id ? <End row={one} onLeave={() => setEnds(null)} /> : null}
            </span>
            {ends === one.id ? null : (
              <button
                type="button"
                className="link small"
                aria-label={`${t('reminders.end')}: ${one.words}`}
                onClick={() => setEnds(one.id)}
              >
                {t('reminders.end')}
              </button>
            )}
          </li>
        ))}
        {ended.map((one) => (
          <li key={one.id}>
            <span className="ink-2">{whenText(one, writing)}</span>
            <span className="gone">
              <s>{one.words}</s>{' '}
              {t('reminders.closed', { why: tMaybe(`reminders.why-${one.closeWhy}`) ?? one.closeWhy })}
            </span>
          </li>
        ))}
      </ul>
      <NewReminder carId={carId} unit={unit} />
    </>
  );
}

function NewReminder({ carId, unit }: Pick<Props, 'carId' | 'unit'>) {
  const add = useDo('reminder.add');
  const [open, setOpen] = useState(false);
  const [words, setWords] = useState('');
  const [dueOn, setDueOn] = useState('');
  const [at, setAt] = useState('');
  const [tried, setTried] = useState(false);
  const dueMileage = at.trim() === '' ? null : readMileageText(at);
  const whole = words.trim() !== '' && (at.trim() === '' ? dueOn !== '' : dueMileage !== null);
  const go = async () => {
    setTried(true);
    if (!whole) return;
    const answer = await add.run({ carId, words, dueOn: dueOn === '' ? null : dueOn, dueMileage });
    if (!answer.ok) return;
    setOpen(false);
    setWords('');
    setDueOn('');
    setAt('');
    setTried(false);
  };
  if (!open)
    return (
      <div className="car-acts">
        <Button small onClick={() => setOpen(true)}>
          {t('reminders.add')}
        </Button>
      </div>
    );
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        void go();
      }}
    >
      <div className="side-by-side">
        <Field
          label={t('reminders.addWhat')}
          value={words}
          onChange={setWords}
          maxLength={300}
          autoFocus
          error={tried && !whole ? t('reminders.addWrong') : null}
        />
        <Field label={t('reminders.addOn')} type="date" value={dueOn} onChange={setDueOn} />
        <Field
          label={`${t('reminders.addAt')}, ${t(unit === 'km' ? 'cars.km' : 'cars.mi')}`}
          value={at}
          onChange={setAt}
          inputMode="numeric"
        />
        <div className="car-form-go">
          <Button type="submit" disabled={add.busy}>
            {t('cars.write')}
          </Button>
        </div>
      </div>
      <NotSaved error={add.error} />
    </form>
  );
}
