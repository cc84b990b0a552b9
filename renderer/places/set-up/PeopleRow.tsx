import { Button } from '../../parts/Button.tsx';
import { Field } from '../../parts/Field.tsx';
import { t } from '../../words/t.ts';
import { Pick, Talk } from '../book-in/Talk.tsx';
import type { Change, Errors, PersonDraft, SetUpDraft } from './draft.ts';

interface Props {
  readonly draft: SetUpDraft;
  readonly change: Change;
  readonly errors: Errors;
}

const ROLES = ['owner', 'desk', 'mechanic'] as const;
const MOST_PEOPLE = 20;

/** People, each with what they do and a code; one of them owns the garage. */
export function PeopleRow({ draft, change, errors }: Props) {
  const changePerson = (id: string, part: Partial<PersonDraft>) =>
    change({ people: draft.people.map((person) => (person.id === id ? { ...person, ...part } : person)) });
  return (
    <Talk head={t('start.people')}>
      {draft.people.map((person) => (
        <div className="side-by-side" key={person.id}>
          <Field
            label={t('start.person')}
            value={person.name}
            onChange={(name) => changePerson(person.id, { name })}
            maxLength={60}
            error={errors[`${person.id} name`] ?? null}
          />
          <Pick
            label={t('start.does')}
            value={person.role}
            options={ROLES.map((role) => ({ value: role, words: t(`start.${role}`) }))}
            onChange={(role) => changePerson(person.id, { role: ROLES.find((one) => one === role) ?? 'mechanic' })}
          />
          <Field
            label={t('start.code')}
            type="password"
            autoComplete="new-password"
            value={person.code}
            onChange={(code) => changePerson(person.id, { code })}
            maxLength={40}
            error={errors[`${person.id} code`] ?? null}
          />
        </div>
      ))}
      {errors.people === undefined ? null : (
        <p className="wrong-words" role="alert">
          {errors.people}
        </p>
      )}
      {draft.people.length < MOST_PEOPLE ? (
        <div>
          <Button
            small
            onClick={() =>
              change({
                people: [
                  ...draft.people,
                  { id: `person-${draft.people.length + 1}`, name: '', role: 'mechanic', code: '' },
                ],
              })
            }
          >
            {t('start.anotherPerson')}
          </Button>
        </div>
      ) : null}
      <Field label={t('start.bays')} value={draft.bays} onChange={(bays) => change({ bays })} maxLength={300} />
    </Talk>
  );
}
