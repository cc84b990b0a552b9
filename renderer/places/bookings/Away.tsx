import { useState } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { Button } from '../../parts/Button.tsx';
import { Field } from '../../parts/Field.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { useAsk } from '../../state/use-ask.ts';
import { useDo } from '../../state/use-do.ts';
import { t } from '../../words/t.ts';
import { readHours } from '../book-in/draft.ts';
import { Pick } from '../book-in/Talk.tsx';

interface Props {
  readonly people: OutputOf<'booking.capacity'>['days'][number]['people'];
  readonly start: { readonly personId: string; readonly day: string };
  readonly onEnd: () => void;
}

const MOST_HOURS = 24_000;

/** Somebody who is away for some days, or for some hours of them; what they cannot do any more shows in the week at once. */
export function Away({ people, start, onEnd }: Props) {
  const [personId, setPerson] = useState(start.personId);
  const [from, setFrom] = useState(start.day);
  const [to, setTo] = useState(start.day);
  const [hours, setHours] = useState('');
  const [words, setWords] = useState('');
  const [said, setSaid] = useState('');
  const add = useDo('absence.add');
  const back = useDo('absence.takeOut');
  const there = useAsk('booking.capacity', from === '' ? null : { from, to: from }).data?.days[0];
  const person = there?.people.find((one) => one.personId === personId);
  const name = people.find((one) => one.personId === personId)?.name ?? '';
  const read = hours.trim() === '' ? null : readHours(hours);
  const wrong = to < from || (hours.trim() !== '' && (read === null || read > MOST_HOURS));
  const go = async () => {
    if (wrong) return;
    const answer = await add.run({ personId, from, to, hours: read, words });
    if (!answer.ok) return;
    const n = answer.output.ids.length;
    setSaid(t(n === 0 ? 'plan.awayNone' : 'plan.awayNoted', { name, n }));
  };
  return (
    <>
      <NotSaved error={add.error ?? back.error} />
      <form
        className="place-foot week-hand"
        aria-label={t('plan.awayTitle')}
        onSubmit={(event) => {
          event.preventDefault();
          void go();
        }}
      >
        <div>
          <p role="status">
            <b>{t('plan.awayTitle')}</b> {said}
          </p>
          <div className="week-fields">
            <Pick
              label={t('plan.who')}
              value={personId}
              options={people.map((one) => ({ value: one.personId, words: one.name }))}
              onChange={setPerson}
            />
            <Field label={t('plan.first')} type="date" value={from} onChange={setFrom} autoFocus />
            <Field label={t('plan.last')} type="date" value={to} onChange={setTo} />
            <Field
              label={t('plan.awayHours')}
              value={hours}
              onChange={setHours}
              inputMode="decimal"
              error={wrong ? t('plan.awayWrong') : null}
            />
            <Field label={t('plan.why')} value={words} onChange={setWords} maxLength={120} />
          </div>
        </div>
        <div className="week-hand-acts">
          {(person?.absences ?? []).map((absence) => (
            <Button key={absence.id} onClick={() => void back.run({ id: absence.id })}>
              {t('plan.isThere')}
            </Button>
          ))}
          <Button keys="Esc" onClick={onEnd}>
            {t('frame.close')}
          </Button>
          <Button kind="go" type="submit" disabled={add.busy}>
            {t('plan.awayAdd')}
          </Button>
        </div>
      </form>
    </>
  );
}
