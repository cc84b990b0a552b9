import { Choice } from '../../parts/Choice.tsx';
import { Field } from '../../parts/Field.tsx';
import { t } from '../../words/t.ts';
import { Talk } from '../book-in/Talk.tsx';
import { type Change, type Errors, NUMBERS, type SetUpDraft } from './draft.ts';

interface Props {
  readonly draft: SetUpDraft;
  readonly change: Change;
  readonly errors: Errors;
}

/** Papers: their language, the number each series goes on from, and the sentences printed on them. */
export function PapersRow({ draft, change, errors }: Props) {
  return (
    <Talk head={t('start.papers')}>
      <Choice
        label={t('start.language')}
        value={draft.language}
        options={[
          { value: 'en', words: 'English' },
          { value: 'de', words: 'Deutsch' },
        ]}
        onChange={(language) => change({ language })}
      />
      <div className="set-up-numbers">
        {NUMBERS.map((number) => (
          <Field
            key={number}
            label={t(`start.${number}`)}
            value={draft[number]}
            onChange={(text) => change({ [number]: text })}
            inputMode="numeric"
            maxLength={9}
            error={errors[number] ?? null}
          />
        ))}
      </div>
      <Field
        label={t('start.notices')}
        value={draft.notices}
        onChange={(notices) => change({ notices })}
        lines={2}
        error={errors.notices ?? null}
        note={t('start.noticesNote')}
      />
    </Talk>
  );
}
