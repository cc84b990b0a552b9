import { useState } from 'react';
import { Field } from '../../parts/Field.tsx';
import { SmallForm } from '../../parts/SmallForm.tsx';
import { useDo } from '../../state/use-do.ts';
import { t } from '../../words/t.ts';
import type { Job } from '../order.ts';
import { Wrong } from '../Wrong.tsx';

/** A whole job given: still recorded, shown at 0.00, with why. */
export function GiveJob({ job }: { readonly job: Job }) {
  const give = useDo('job.give');
  const [why, setWhy] = useState<string | null>(null);
  const { id, revision, letter } = job;
  if (job.given)
    return (
      <p>
        {t('edit.jobGiven', { why: job.giveWhy })}{' '}
        <button type="button" className="link small" onClick={() => void give.run({ id, revision, given: false })}>
          {t('sheet.charge')}
        </button>
        <Wrong error={give.error} />
      </p>
    );
  if (why === null)
    return (
      <button type="button" className="link small" onClick={() => setWhy('')}>
        {t('edit.giveJob', { letter })}
      </button>
    );
  return (
    <SmallForm
      verb={t('edit.giveJob', { letter })}
      onSend={() => give.run({ id, revision, given: true, why })}
      busy={give.busy}
      wrong={<Wrong error={give.error} />}
    >
      <Field label={t('edit.giveWhy')} value={why} onChange={setWhy} autoFocus maxLength={200} />
    </SmallForm>
  );
}
