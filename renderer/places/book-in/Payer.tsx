import { useState } from 'react';
import { Choice } from '../../parts/Choice.tsx';
import { t } from '../../words/t.ts';
import { CustomerPick } from '../customers/CustomerPick.tsx';
import type { Change, Draft } from './draft.ts';

interface Props {
  readonly draft: Draft;
  readonly change: Change;
}

/** Who pays: they do, or another customer (an employer, a fleet, whoever gives the warranty). */
export function Payer({ draft, change }: Props) {
  const [other, setOther] = useState(draft.payer !== null);
  return (
    <>
      <Choice
        label={t('intake.payer')}
        value={other ? 'other' : 'self'}
        options={[
          { value: 'self', words: t('intake.payerSelf') },
          { value: 'other', words: t('intake.payerOther') },
        ]}
        onChange={(value) => {
          setOther(value === 'other');
          change({ payer: null });
        }}
      />
      {!other ? null : draft.payer === null ? (
        <CustomerPick
          label={t('intake.payerName')}
          not={draft.customerId}
          onPick={({ id, name }) => change({ payer: { id, name } })}
        />
      ) : (
        <p className="small" role="status">
          {t('intake.payerIs', { name: draft.payer.name })}{' '}
          <button type="button" className="link" onClick={() => change({ payer: null })}>
            {t('intake.payerChange')}
          </button>
        </p>
      )}
    </>
  );
}
