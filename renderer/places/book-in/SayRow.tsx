import { Choices } from '../../parts/Choice.tsx';
import { Field } from '../../parts/Field.tsx';
import { t } from '../../words/t.ts';
import type { Change, Draft, Errors } from './draft.ts';
import { Talk } from './Talk.tsx';

const WHEN = ['cold', 'speed', 'turning', 'braking', 'pulling', 'always'] as const;

interface Props {
  readonly draft: Draft;
  readonly change: Change;
  readonly errors: Errors;
}

/** What they say, in their own words, and when it happens. */
export function SayRow({ draft, change, errors }: Props) {
  return (
    <Talk head={t('intake.say')}>
      <Field
        label={t('intake.complaint')}
        value={draft.complaint}
        onChange={(complaint) => change({ complaint })}
        lines={2}
        said
        maxLength={4000}
        error={errors.complaint ?? null}
      />
      <Choices
        label={t('intake.askWhen')}
        values={draft.when}
        options={WHEN.map((key) => ({ value: t(`intake.${key}`), words: t(`intake.${key}`) }))}
        onChange={(when) => change({ when })}
      />
    </Talk>
  );
}
