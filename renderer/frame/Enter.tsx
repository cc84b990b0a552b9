import { useEffect, useRef, useState } from 'react';
import { Button } from '../parts/Button.tsx';
import { Choice } from '../parts/Choice.tsx';
import { Field } from '../parts/Field.tsx';
import { useBegun } from '../state/begun.ts';
import { enter } from '../state/session.ts';
import { useShop } from '../state/shop.ts';
import { errorSentence } from '../words/error-sentence.ts';
import { t, tMaybe } from '../words/t.ts';

/**
 * Who is working at this window: a name and its code. Of several people none is proposed: at a shared desk the code of
 * one would be typed under the name of another.
 */
export function Enter() {
  const shop = useShop();
  const people = (shop?.people ?? []).filter((person) => person.active);
  const [chosen, setChosen] = useState<string | null>(null);
  const [code, setCode] = useState('');
  const [error, setError] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const [nobody, setNobody] = useState(false);
  const form = useRef<HTMLFormElement>(null);
  const alone = people.length === 1;
  const person = people.find((one) => one.id === chosen) ?? (alone ? people[0] : undefined);
  const toNames = () => form.current?.querySelector('input')?.focus();
  useEffect(() => {
    if (!alone) form.current?.querySelector('input')?.focus();
  }, [alone]);

  const go = async () => {
    setNobody(person === undefined);
    if (person === undefined) return toNames();
    setBusy(true);
    const answer = await enter(person.id, code);
    setBusy(false);
    if (answer.ok) return useBegun.setState({ said: '' });
    setCode('');
    const wrong = answer.error.code === 'not-allowed' || answer.error.code === 'bad-input';
    setError(wrong ? t('frame.enterWrong', { person: person.name }) : errorSentence(answer.error));
  };

  return (
    <main className="enter">
      <h1>{t('frame.enterTitle')}</h1>
      <HowItBegan />
      <form
        ref={form}
        onSubmit={(event) => {
          event.preventDefault();
          void go();
        }}
      >
        <Choice
          label={t('frame.enterWho')}
          value={person?.id ?? null}
          options={people.map((one) => ({ value: one.id, words: one.name }))}
          onChange={(id) => {
            setChosen(id);
            setNobody(false);
            setError(null);
          }}
        />
        {nobody ? (
          <p className="wrong-words" role="alert">
            {t('frame.enterNobody')}
          </p>
        ) : null}
        <Field
          label={t('frame.enterCode')}
          type="password"
          value={code}
          onChange={setCode}
          error={error}
          autoComplete="off"
          autoFocus={alone}
        />
        <div>
          <Button kind="go" type="submit" disabled={busy}>
            {t('frame.enterGo')}
          </Button>
        </div>
      </form>
    </main>
  );
}

/** What was brought back, or the codes of the demo garage, in the window that did it. */
function HowItBegan() {
  const { said, people } = useBegun();
  return (
    <>
      {said === '' ? null : <p role="status">{said}</p>}
      {people.length === 0 ? null : (
        <section>
          <h2>{t('start.demoCodes')}</h2>
          <ul>
            {people.map((one) => (
              <li key={one.name}>
                {t('start.demoPerson', { name: one.name, role: tMaybe(`start.${one.role}`) ?? '', code: one.code })}
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}
