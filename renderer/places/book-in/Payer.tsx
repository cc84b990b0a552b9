import { useDeferredValue, useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { Field } from '../../parts/Field.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { useAsk } from '../../state/use-ask.ts';
import { useDo } from '../../state/use-do.ts';
import { t } from '../../words/t.ts';
import type { Change, Draft } from './draft.ts';

interface Props {
  readonly draft: Draft;
  readonly change: Change;
}

/** Who pays: they do, or another customer (an employer, a fleet, whoever gives the warranty). */
export function Payer({ draft, change }: Props) {
  const [other, setOther] = useState(draft.payer !== null);
  const [text, setText] = useState('');
  const add = useDo('customer.add');
  const asked = useDeferredValue(text.trim());
  const found = useAsk('customer.list', asked.length > 1 ? { text: asked, most: 6 } : null).data?.rows ?? [];
  const hits = found.filter((row) => row.id !== draft.customerId);
  const addNew = async () => {
    const answer = await add.run({ name: text });
    if (answer.ok) change({ payer: { id: answer.output.id, name: text.trim() } });
  };
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
        <>
          <Field label={t('intake.payerName')} value={text} onChange={setText} maxLength={120} autoFocus />
          {asked.length < 2 ? null : (
            <fieldset className="choice">
              <legend>{t('intake.payerWhich')}</legend>
              <div className="talk-hits">
                {hits.map((row) => (
                  <Button key={row.id} small onClick={() => change({ payer: { id: row.id, name: row.name } })}>
                    {row.name} {row.phone}
                  </Button>
                ))}
                <Button small disabled={add.busy} onClick={() => void addNew()}>
                  {t('intake.payerAdd', { name: asked })}
                </Button>
              </div>
            </fieldset>
          )}
          <NotSaved error={add.error} />
        </>
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
