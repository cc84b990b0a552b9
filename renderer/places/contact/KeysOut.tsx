import { useState } from 'react';
import { Field } from '../../parts/Field.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { SmallForm } from '../../parts/SmallForm.tsx';
import { useNow } from '../../state/now.ts';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { useDo } from '../../state/use-do.ts';
import { t } from '../../words/t.ts';
import { nearText } from '../../words/times.ts';

/** Keys that left the shop before the car did: when, which, to whom. */
export function KeysOut({ orderId }: { readonly orderId: string }) {
  const writing = useWriting();
  const now = useNow(60_000);
  const rows = useAsk('key.list', { orderId }).data?.rows ?? [];
  const [open, setOpen] = useState(false);
  return (
    <section aria-label={t('contact.keys')}>
      <h3>{t('contact.keys')}</h3>
      {rows.length === 0 ? <p className="small ink-2">{t('contact.keysNone')}</p> : null}
      <ul className="contact-rows">
        {rows.map((row) => (
          <li key={row.id}>
            <span className="ink-2">{nearText(row.at, writing, now)}</span>
            <span>
              {t('contact.keyOut', { what: row.words || t('contact.keyAll'), who: row.toWhom })}{' '}
              <span className="small ink-2">{row.by}</span>
            </span>
          </li>
        ))}
      </ul>
      {open ? (
        <GiveKey orderId={orderId} onDone={() => setOpen(false)} />
      ) : (
        <button type="button" className="link" onClick={() => setOpen(true)}>
          {t('contact.keyGive')}
        </button>
      )}
    </section>
  );
}

function GiveKey({ orderId, onDone }: { readonly orderId: string; readonly onDone: () => void }) {
  const give = useDo('key.handOut');
  const [toWhom, setToWhom] = useState('');
  const [words, setWords] = useState('');
  const [tried, setTried] = useState(false);
  const go = async () => {
    setTried(true);
    if (toWhom.trim() === '') return;
    const answer = await give.run({ orderId, toWhom, words });
    if (answer.ok) onDone();
  };
  return (
    <SmallForm verb={t('contact.keyGive')} onSend={go} busy={give.busy} wrong={<NotSaved error={give.error} />}>
      <Field
        label={t('contact.keyWhom')}
        value={toWhom}
        onChange={setToWhom}
        maxLength={120}
        autoFocus
        error={tried && toWhom.trim() === '' ? t('contact.keyWhomNeeded') : null}
      />
      <Field label={t('contact.keyWhat')} value={words} onChange={setWords} maxLength={200} />
    </SmallForm>
  );
}
