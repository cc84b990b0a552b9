import { Choice } from '../../parts/Choice.tsx';
import { Field } from '../../parts/Field.tsx';
import { t } from '../../words/t.ts';
import { Talk } from '../book-in/Talk.tsx';
import type { Change, Errors, SetUpDraft } from './draft.ts';

interface Props {
  readonly draft: SetUpDraft;
  readonly change: Change;
  readonly errors: Errors;
}

/** Yes: how far above a yes covered work may drift. The strictest stands until somebody checks their rule. */
export function YesRow({ draft, change, errors }: Props) {
  return (
    <Talk head={t('start.yes')}>
      <Choice
        label={t('start.overrun')}
        value={draft.overrun}
        options={[
          { value: 'none', words: t('start.none') },
          { value: 'pct', words: t('start.pct') },
          { value: 'lesser', words: t('start.lesser') },
        ]}
        onChange={(overrun) => change({ overrun })}
      />
      <div className="side-by-side">
        {draft.overrun === 'none' ? null : (
          <Field
            label={t('start.overPercent')}
            value={draft.overPercent}
            onChange={(overPercent) => change({ overPercent })}
            inputMode="decimal"
            error={errors.overPercent ?? null}
          />
        )}
        {draft.overrun === 'lesser' ? (
          <Field
            label={t('start.overSum')}
            value={draft.overSum}
            onChange={(overSum) => change({ overSum })}
            inputMode="decimal"
            error={errors.overSum ?? null}
          />
        ) : null}
        <Field
          label={t('start.source')}
          value={draft.overSource}
          onChange={(overSource) => change({ overSource })}
          maxLength={300}
        />
        <Field
          label={t('start.checkedOn')}
          type="date"
          value={draft.overCheckedOn}
          onChange={(overCheckedOn) => change({ overCheckedOn })}
        />
      </div>
      <p className="small ink-2">{t('start.overHint')}</p>
    </Talk>
  );
}
