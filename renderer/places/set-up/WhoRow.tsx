import { Field } from '../../parts/Field.tsx';
import { t } from '../../words/t.ts';
import { Talk } from '../book-in/Talk.tsx';
import type { Change, Errors, SetUpDraft } from './draft.ts';

interface Props {
  readonly draft: SetUpDraft;
  readonly change: Change;
  readonly errors: Errors;
}

/** Who: what stands at the head of every paper. */
export function WhoRow({ draft, change, errors }: Props) {
  return (
    <Talk head={t('start.who')} words={t('start.onPapers')}>
      <div className="side-by-side">
        <Field
          label={t('start.name')}
          value={draft.name}
          onChange={(name) => change({ name })}
          maxLength={120}
          error={errors.name ?? null}
          autoFocus
        />
        <Field
          label={t('start.phone')}
          type="tel"
          value={draft.phone}
          onChange={(phone) => change({ phone })}
          maxLength={40}
          error={errors.phone ?? null}
        />
        <Field
          label={t('start.email')}
          type="email"
          value={draft.email}
          onChange={(email) => change({ email })}
          maxLength={120}
          error={errors.email ?? null}
        />
      </div>
      <div className="side-by-side">
        <Field
          label={t('start.address')}
          value={draft.address}
          onChange={(address) => change({ address })}
          lines={2}
          error={errors.address ?? null}
        />
        <Field
          label={t('start.registration')}
          value={draft.registration}
          onChange={(registration) => change({ registration })}
          maxLength={120}
          error={errors.registration ?? null}
        />
        <Field
          label={t('start.taxNumber')}
          value={draft.taxNumber}
          onChange={(taxNumber) => change({ taxNumber })}
          maxLength={60}
          error={errors.taxNumber ?? null}
        />
      </div>
    </Talk>
  );
}
