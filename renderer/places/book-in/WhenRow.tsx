import { Field } from '../../parts/Field.tsx';
import { useShop } from '../../state/shop.ts';
import { t } from '../../words/t.ts';
import type { Change, Draft, Errors } from './draft.ts';
import { Pick, Talk } from './Talk.tsx';

interface Props {
  readonly draft: Draft;
  readonly change: Change;
  readonly errors: Errors;
}

/** When: a bay for some hours, and what the customer is promised. */
export function WhenRow({ draft, change, errors }: Props) {
  const bays = useShop()?.bays ?? [];
  return (
    <Talk head={t('intake.when')}>
      <div className="side-by-side">
        <Pick
          label={t('intake.bay')}
          value={draft.bayId}
          options={[
            { value: '', words: t('intake.noBay') },
            ...bays.map((bay) => ({ value: bay.id, words: `${bay.name} ${bay.words}`.trim() })),
          ]}
          onChange={(bayId) => change({ bayId })}
        />
        {draft.bayId === '' ? null : (
          <>
            <Field label={t('intake.day')} type="date" value={draft.day} onChange={(day) => change({ day })} />
            <Field label={t('intake.from')} type="time" value={draft.from} onChange={(from) => change({ from })} />
            <Field
              label={t('intake.hours')}
              value={draft.hours}
              onChange={(hours) => change({ hours })}
              inputMode="decimal"
              error={errors.hours ?? null}
            />
          </>
        )}
      </div>
      <div className="side-by-side">
        <Field
          label={t('intake.promise')}
          type="datetime-local"
          value={draft.promise}
          onChange={(promise) => change({ promise })}
        />
        <Field
          label={t('intake.promiseWords')}
          value={draft.promiseWords}
          onChange={(promiseWords) => change({ promiseWords })}
          maxLength={80}
        />
      </div>
      <div className="side-by-side">
        <Field
          label={t('intake.ownMost')}
          value={draft.ownMost}
          onChange={(ownMost) => change({ ownMost })}
          inputMode="decimal"
          error={errors.ownMost ?? null}
        />
        <Field label={t('intake.po')} value={draft.po} onChange={(po) => change({ po })} maxLength={60} />
      </div>
    </Talk>
  );
}
