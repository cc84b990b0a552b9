import { useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Cell } from '../../parts/Cell.tsx';
import { Field } from '../../parts/Field.tsx';
import { Tick } from '../../parts/Tick.tsx';
import { act } from '../../state/call.ts';
import { useWriting } from '../../state/shop.ts';
import { useDo } from '../../state/use-do.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { amountText, readAmount } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { Pick } from '../book-in/Talk.tsx';
import { cellSaver } from './cell-saver.ts';
import { saidOfList } from './list-error.ts';
import { PersonWeek } from './PersonWeek.tsx';
import { readPerson } from './read-person.ts';
import { readRole, roleOptions } from './roles.ts';
import { type ShopRow, useSaved, useShopPage } from './setting.tsx';

type Person = ShopRow['people'][number];
type Change = Partial<Pick<Person, 'name' | 'role' | 'active'>> & { readonly payRate?: number; readonly code?: string };

/** One person: what they do, what an hour of theirs costs, a new code, whether they still work here. */
export function PersonPart({ person }: { readonly person: Person }) {
  const { mayChange } = useShopPage();
  const writing = useWriting();
  const [wrong, say] = useSaved();
  const saver = (
    show: (row: Person) => string,
    read: (text: string) => Change | null,
    words = t('start.personNeeded'),
  ) =>
    cellSaver<Person, Change>({
      row: person,
      show,
      read,
      wrong: words,
      send: (row, change) => act('person.change', { id: row.id, revision: row.revision, ...change }),
      fresh: () => readPerson(person.id),
      say: saidOfList,
    });
  const set = async (change: Change) =>
    say(
      await saver(
        () => '',
        () => change,
      )('', true),
    );
  return (
    <section aria-label={person.name} className={person.active ? '' : 'shop-gone'}>
      <h3>
        {person.name} {person.active ? null : <span className="ink-2">{t('shop.gone')}</span>}
      </h3>
      <div className="shop-person">
        <div className="field">
          <span className="small ink-2">{t('start.person')}</span>
          <Cell
            label={t('shop.personName', { name: person.name })}
            value={person.name}
            readOnly={!mayChange}
            save={saver(
              (row) => row.name,
              (name) => (name.trim() === '' ? null : { name }),
            )}
          />
        </div>
        {mayChange ? (
          <Pick
            label={t('start.does')}
            value={person.role}
            options={roleOptions()}
            onChange={(role) => void set({ role: readRole(role) })}
          />
        ) : (
          <span>{t(`start.${person.role}`)}</span>
        )}
        {person.payRate === null ? null : (
          <div className="field">
            <span className="small ink-2">{t('shop.payRate')}</span>
            <Cell
              label={t('shop.payRateOf', { name: person.name })}
              value={amountText(person.payRate, writing)}
              readOnly={!mayChange}
              save={saver(
                (row) => amountText(row.payRate, writing),
                (text) => {
                  const payRate = readAmount(text, writing);
                  return payRate === null || payRate < 0 ? null : { payRate };
                },
                t('start.hourWrong'),
              )}
            />
          </div>
        )}
        {mayChange ? <NewCode person={person} /> : null}
        {mayChange ? (
          <Tick ticked={person.active} onTick={(active) => void set({ active })}>
            {t('shop.worksHere')}
          </Tick>
        ) : null}
      </div>
      {person.active ? <PersonWeek person={person} /> : null}
      {wrong}
    </section>
  );
}

/** A code is set anew, never shown. */
function NewCode({ person }: { readonly person: Person }) {
  const change = useDo('person.change');
  const [code, setCode] = useState('');
  const [said, setSaid] = useState('');
  const [wrong, setWrong] = useState<string | null>(null);
  const writing = useWriting();
  const go = async () => {
    setSaid('');
    if (code.length < 4) return setWrong(t('start.codeWrong'));
    const answer = await change.run({ id: person.id, revision: person.revision, code });
    setWrong(answer.ok ? null : errorSentence(answer.error, writing));
    if (!answer.ok) return;
    setCode('');
    setSaid(t('shop.codeSet', { name: person.name }));
  };
  return (
    <form
      className="shop-code"
      onSubmit={(event) => {
        event.preventDefault();
        void go();
      }}
    >
      <Field
        label={t('shop.newCode', { name: person.name })}
        type="password"
        value={code}
        onChange={setCode}
        error={wrong}
        autoComplete="new-password"
        maxLength={40}
      />
      <Button type="submit" disabled={change.busy}>
        {t('shop.setCode')}
      </Button>
      <span role="status" className="small ink-2">
        {said}
      </span>
    </form>
  );
}
