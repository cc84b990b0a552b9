import { civilDateOf } from '../../../core/time/instant.ts';
import { Field } from '../../parts/Field.tsx';
import { useWriting } from '../../state/shop.ts';
import { t } from '../../words/t.ts';
import { type BayDraft, BayTime } from './BayTime.tsx';
import type { Change, Draft, Errors } from './draft.ts';
import { Talk } from './Talk.tsx';

interface Props {
  readonly draft: Draft;
  readonly change: Change;
  readonly errors: Errors;
}

/** When: a day and a bay for some hours, and what the customer is promised. */
export function WhenRow({ draft, change, errors }: Props) {
  const { zone } = useWriting();
  // A car for a later day is not here yet.
  const put = (part: Partial<BayDraft>) =>
    change((part.day ?? '') > civilDateOf(Date.now(), zone) ? { ...part, here: false, night: false } : part);
  return (
    <Talk head={t('intake.when')} words={t('intake.whenWords')}>
      <BayTime value={draft} onChange={put} error={errors.hours ?? null} />
      <div className="side-by-side">
        <Field
          label={t('intake.promise')}
          type="datetime-local"
          value={draft.promise}
          onChange={(promise) => change({ promise })}
          error={errors.promise ?? null}
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
