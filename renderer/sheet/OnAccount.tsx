import { useState } from 'react';
import { Button } from '../parts/Button.tsx';
import { CreditBar } from '../parts/CreditBar.tsx';
import { Field } from '../parts/Field.tsx';
import { SmallForm } from '../parts/SmallForm.tsx';
import { useSession } from '../state/session.ts';
import { useWriting } from '../state/shop.ts';
import { useDo } from '../state/use-do.ts';
import { amountText } from '../words/figures.ts';
import { t } from '../words/t.ts';
import { nearText } from '../words/times.ts';
import type { Order } from './order.ts';
import { Wrong } from './Wrong.tsx';

/** An order over its account's limit: what it would come to, and the owner's word that lets it go on; nothing inside it. */
export function OnAccount({ order }: { readonly order: Order }) {
  const writing = useWriting();
  const { credit } = order;
  if (credit === null || (!credit.held && credit.pass === null)) return null;
  const { figures, pass } = credit;
  return (
    <section aria-label={t('account.title')}>
      <h3>{t('account.title')}</h3>
      {figures === null ? null : (
        <CreditBar
          owed={figures.openInvoices}
          saidYes={figures.authorised + figures.mine}
          asked={0}
          limit={figures.limit}
        />
      )}
      {pass !== null ? (
        <p>{t('account.passed', { by: pass.by, when: nearText(pass.at, writing, Date.now()), reason: pass.reason })}</p>
      ) : (
        <>
          <p>
            <b className="in-stop">
              {figures === null
                ? t('account.beyond', { name: credit.name })
                : t('account.over', { name: credit.name, over: amountText(figures.over, writing) })}
            </b>{' '}
            {t('account.waits')}
          </p>
          <LetPass orderId={order.id} />
        </>
      )}
    </section>
  );
}

/** The owner's word, once, with a reason that stays. */
function LetPass({ orderId }: { readonly orderId: string }) {
  const letPass = useDo('credit.letPass');
  const owner = useSession((session) => session.person?.role === 'owner');
  const [reason, setReason] = useState('');
  const [tried, setTried] = useState(false);
  if (!owner)
    return (
      <p>
        <Button held={t('account.ownerOnly')}>{t('account.letPass')}</Button>
      </p>
    );
  return (
    <SmallForm
      verb={t('account.letPass')}
      onSend={() => {
        setTried(true);
        return reason.trim() === '' ? undefined : letPass.run({ orderId, reason });
      }}
      busy={letPass.busy}
      big
      wrong={<Wrong error={letPass.error} />}
    >
      <Field
        label={t('account.reason')}
        value={reason}
        onChange={setReason}
        maxLength={300}
        error={tried && reason.trim() === '' ? t('account.reasonNeeded') : null}
      />
    </SmallForm>
  );
}
