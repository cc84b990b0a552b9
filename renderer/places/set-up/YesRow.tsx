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

const MODES = ['none', 'pct', 'lesser', 'greater'] as const;

/** Yes: how far above a yes covered work may drift. The strictest stands until somebody checks their rule. */
export function YesRow({ draft, change, errors }: Props) {
  return (
    <Talk head={t('start.yes')}>
      <Choice
        label={t('start.overrun')}
        value={draft.overrun}
        options={MODES.map((mode) => ({ value: mode, words: t(`start.${mode}`) }))}
        onChange={(overrun) => change({ overrun })}
      />
      {draft.overrun === 'none' ? null : <Figures draft={draft} change={change} errors={errors} />}
      <div className="side-by-side">
        <Field
          label={t('start.source')}
          value={draft.overSource}
          onChange={(overSource) => change({ overSource })}
          maxLength={300}
        />
        <Field
          label={t('start.checkedOn')}
          type="date"
          past
          value={draft.overCheckedOn}
          onChange={(overCheckedOn) => change({ overCheckedOn })}
        />
      </div>
      <p className="small ink-2">
        {t('start.overHint')} {draft.overCheckedOn === '' ? <b className="in-heed">{t('start.notChecked')}</b> : null}
      </p>
    </Talk>
  );
}

function Figures({ draft, change, errors }: Props) {
  return (
    <>
      <div className="side-by-side">
        <Field
          label={t('start.overPercent')}
          value={draft.overPercent}
          onChange={(overPercent) => change({ overPercent })}
          inputMode="decimal"
          error={errors.overPercent ?? null}
        />
        {draft.overrun === 'pct' ? null : (
          <Field
            label={t('start.overSum')}
            value={draft.overSum}
            onChange={(overSum) => change({ overSum })}
            inputMode="decimal"
            error={errors.overSum ?? null}
          />
        )}
        <Field
          label={t('start.overCap')}
          value={draft.overCap}
          onChange={(overCap) => change({ overCap })}
          inputMode="decimal"
          error={errors.overCap ?? null}
        />
      </div>
      <div className="side-by-side">
        <Choice
          label={t('start.overBase')}
          value={draft.overBase}
          options={[
            { value: 'gross', words: t('start.gross') },
            { value: 'net', words: t('start.net') },
          ]}
          onChange={(overBase) => change({ overBase })}
        />
        <Choice
          label={t('start.overEdge')}
          value={draft.overEdge}
          options={[
            { value: 'inside', words: t('start.edgeInside') },
            { value: 'outside', words: t('start.edgeOutside') },
          ]}
          onChange={(overEdge) => change({ overEdge })}
        />
      </div>
    </>
  );
}
