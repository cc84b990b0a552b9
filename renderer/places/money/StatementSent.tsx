import { useState } from 'react';
import type { InputOf } from '../../../core/contract/index.ts';
import { Field } from '../../parts/Field.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { SmallForm } from '../../parts/SmallForm.tsx';
import { useShop, useWriting } from '../../state/shop.ts';
import { useDo } from '../../state/use-do.ts';
import { t } from '../../words/t.ts';
import { civilText } from '../../words/times.ts';

type Days = Omit<Extract<InputOf<'statement.sent'>, { customerId: string }>, 'how'>;

interface Props {
  /** The statement, by its id or by what it was made from. */
  readonly which: { readonly id: string } | Days;
  readonly until: string;
  readonly customer: string;
  readonly email: string;
  /** Once it is written down, while the form still stands. */
  readonly onDone?: () => void;
}

/** How a statement was sent, in their own words, and the machine's mail program to send it with. */
export function StatementSent({ which, until, customer, email, onDone }: Props) {
  const writing = useWriting();
  const shop = useShop()?.settings?.name ?? '';
  const sent = useDo('statement.sent');
  const noted = useDo('statement.noted');
  const [how, setHow] = useState(email === '' ? t('statement.byPost') : t('statement.byEmail', { to: email }));
  const [missing, setMissing] = useState<string | null>(null);
  const record = async () => {
    setMissing(how.trim() === '' ? t('statement.howNeeded') : null);
    if (how.trim() === '') return;
    const answer = await sent.run({ ...which, how });
    if (answer.ok) onDone?.();
  };
  const subject = t('statement.mailSubject', { day: civilText(until, writing), shop });
  return (
    <div>
      <SmallForm
        verb={t('statement.wasSent')}
        onSend={record}
        busy={sent.busy}
        big
        name={t('statement.sentOf', { name: customer })}
        said={t('statement.wasSentOf', { name: customer })}
      >
        <Field label={t('statement.how')} value={how} onChange={setHow} error={missing} maxLength={120} />
      </SmallForm>
      {email === '' ? null : (
        <a
          className="link small"
          href={`mailto:${email}?subject=${encodeURIComponent(subject)}`}
          onClick={() => void noted.run({ ...which, what: 'mail' })}
        >
          {t('statement.mail')}
        </a>
      )}
      <NotSaved error={sent.error} onAgain={() => void sent.again()} />
      <NotSaved error={noted.error} onAgain={() => void noted.again()} />
    </div>
  );
}
