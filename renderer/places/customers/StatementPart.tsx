import { useState } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { savePdf } from '../../bench/save-pdf.ts';
import { Button } from '../../parts/Button.tsx';
import { Field } from '../../parts/Field.tsx';
import { MoneyText } from '../../parts/MoneyText.tsx';
import { Notice, NotSaved } from '../../parts/Notice.tsx';
import { ask } from '../../state/call.ts';
import { useNow } from '../../state/now.ts';
import { useShop, useWriting } from '../../state/shop.ts';
import type { CallError } from '../../state/transport.ts';
import { useAsk } from '../../state/use-ask.ts';
import { useDo } from '../../state/use-do.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { amountText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { civilText, nearText } from '../../words/times.ts';

type Seen = OutputOf<'statement.get'>;
const whole = (day: string) => (/^\d{4}-\d{2}-\d{2}$/.test(day) ? day : null);

/** What is owed from day to day: made as a PDF when it is wanted, and written down once it was sent. */
export function StatementPart({ customerId, email }: { readonly customerId: string; readonly email: string }) {
  const [open, show] = useState(false);
  return (
    <>
      <p>
        <Button small expanded={open} onClick={() => show(!open)}>
          {t('statement.open')}
        </Button>
      </p>
      {open ? <Days customerId={customerId} email={email} /> : null}
    </>
  );
}

function Days({ customerId, email }: { readonly customerId: string; readonly email: string }) {
  const writing = useWriting();
  const [from, setFrom] = useState('');
  const [until, setUntil] = useState('');
  const [wrong, setWrong] = useState<CallError | null>(null);
  const days = { from: whole(from), until: whole(until) };
  const { data, error } = useAsk('statement.get', { customerId, ...days });
  const make = async () => {
    const answer = await ask('statement.pdf', { customerId, ...days });
    setWrong(answer.ok ? null : answer.error);
    if (answer.ok) savePdf(answer.output.name, answer.output.base64);
  };
  return (
    <section aria-label={t('statement.title')}>
      <div className="row-form">
        <Field label={t('statement.from')} type="date" value={from || (data?.from ?? '')} onChange={setFrom} />
        <Field label={t('statement.until')} type="date" value={until || (data?.until ?? '')} onChange={setUntil} />
        <Button small onClick={() => void make()}>
          {t('statement.print')}
        </Button>
      </div>
      {error === null ? null : <Notice>{errorSentence(error, writing)}</Notice>}
      {wrong === null ? null : <Notice>{errorSentence(wrong, writing)}</Notice>}
      {data === undefined || error !== null ? null : <Said seen={data} customerId={customerId} email={email} />}
    </section>
  );
}

function Said({
  seen,
  customerId,
  email,
}: {
  readonly seen: Seen;
  readonly customerId: string;
  readonly email: string;
}) {
  const writing = useWriting();
  const now = useNow(60_000);
  const shop = useShop()?.settings?.name ?? '';
  const sent = useDo('statement.sent');
  const [how, setHow] = useState(email === '' ? t('statement.byPost') : t('statement.byEmail', { to: email }));
  const [missing, setMissing] = useState<string | null>(null);
  const { from, until, asOf, closing } = seen;
  const pastDue = seen.open.reduce((sum, one) => sum + (one.daysPastDue > 0 ? one.open : 0), 0);
  const alone = seen.unapplied.reduce((sum, one) => sum + one.sum, 0);
  const record = async () => {
    setMissing(how.trim() === '' ? t('statement.howNeeded') : null);
    if (how.trim() !== '') await sent.run({ customerId, from, until, asOf, how });
  };
  const subject = t('statement.mailSubject', { day: civilText(until, writing), shop });
  return (
    <>
      <p>
        {t('statement.closing')} <MoneyText amount={closing} reckoning={seen.reckoning.closing} />{' '}
        {pastDue === 0 ? null : t('statement.pastDue', { sum: amountText(pastDue, writing) })}{' '}
        {alone === 0 ? null : t('statement.alone', { sum: amountText(alone, writing) })}
      </p>
      {seen.rows.length === 0 && closing === 0 ? <p className="ink-2">{t('statement.nothing')}</p> : null}
      <form
        className="row-form"
        onSubmit={(event) => {
          event.preventDefault();
          void record();
        }}
      >
        <Field label={t('statement.how')} value={how} onChange={setHow} error={missing} maxLength={120} />
        <Button small type="submit" disabled={sent.busy}>
          {t('statement.wasSent')}
        </Button>
      </form>
      {email === '' ? null : (
        <a className="link" href={`mailto:${email}?subject=${encodeURIComponent(subject)}`}>
          {t('statement.mail')}
        </a>
      )}
      <NotSaved error={sent.error} onAgain={() => void sent.again()} />
      {seen.sent.map((one) => (
        <p key={one.id} className="small ink-2">
          {t('statement.sentOn', {
            ...{ when: nearText(one.at, writing, now), how: one.how, sum: amountText(one.closing, writing) },
            day: civilText(one.until, writing),
          })}
        </p>
      ))}
    </>
  );
}
