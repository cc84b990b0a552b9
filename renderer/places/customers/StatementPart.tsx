import { useState } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { savePdf } from '../../bench/save-pdf.ts';
import { Button } from '../../parts/Button.tsx';
import { Field } from '../../parts/Field.tsx';
import { MoneyText } from '../../parts/MoneyText.tsx';
import { Notice, NotSaved } from '../../parts/Notice.tsx';
import { ask } from '../../state/call.ts';
import { useNow } from '../../state/now.ts';
import { useWriting } from '../../state/shop.ts';
import type { CallError } from '../../state/transport.ts';
import { useAskAsTyped } from '../../state/use-ask.ts';
import { useDo } from '../../state/use-do.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { amountText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { civilText, nearText } from '../../words/times.ts';
import { StatementSent } from '../money/StatementSent.tsx';
import '../money/statement.css';

type Seen = OutputOf<'statement.get'>;

interface Props {
  readonly customer: { readonly id: string; readonly name: string; readonly email: string };
}

/** What is owed from day to day: made as a PDF when it is wanted, and written down once it was sent. */
export function StatementPart({ customer }: Props) {
  const [open, show] = useState(false);
  return (
    <>
      <p className="customer-tick">
        <Button small expanded={open} onClick={() => show(!open)}>
          {t('statement.open')}
        </Button>
      </p>
      {open ? <Days customer={customer} /> : null}
    </>
  );
}

/** null: not touched, the usual day; empty: half typed, the usual one meanwhile. */
const typed = (day: string | null) => (day === '' ? null : day);

function Days({ customer }: Props) {
  const writing = useWriting();
  const [from, setFrom] = useState<string | null>(null);
  const [until, setUntil] = useState<string | null>(null);
  const [wrong, setWrong] = useState<CallError | null>(null);
  /** As of when the PDF was made: what is sent is that one, not what came in since. */
  const [made, setMade] = useState<Pick<Seen, 'from' | 'until' | 'asOf'> | null>(null);
  const { data, error } = useAskAsTyped('statement.get', {
    ...{ customerId: customer.id, from: typed(from), until: typed(until) },
  });
  const noted = useDo('statement.noted');
  const make = async () => {
    if (data === undefined) return;
    const wanted = { from: data.from, until: data.until, asOf: data.asOf };
    const answer = await ask('statement.pdf', { customerId: customer.id, ...wanted });
    setWrong(answer.ok ? null : answer.error);
    if (!answer.ok) return;
    setMade(wanted);
    void noted.run({ customerId: customer.id, ...wanted, what: 'made' });
    savePdf(answer.output.name, answer.output.base64);
  };
  const askedWrong = error?.code === 'bad-input' ? errorSentence(error, writing) : null;
  const good = error === null ? data : undefined;
  return (
    <section className="statement-part" aria-label={t('statement.title')}>
      <div className="statement-days">
        <Field label={t('statement.from')} type="date" past value={from ?? data?.from ?? ''} onChange={setFrom} />
        <Field
          label={t('statement.until')}
          type="date"
          past
          value={until ?? data?.until ?? ''}
          onChange={setUntil}
          error={askedWrong}
        />
        <Button disabled={good === undefined} onClick={() => void make()}>
          {t('statement.print')}
        </Button>
      </div>
      {error === null || askedWrong !== null ? null : <Notice>{errorSentence(error, writing)}</Notice>}
      {wrong === null ? null : <Notice>{errorSentence(wrong, writing)}</Notice>}
      <NotSaved error={noted.error} onAgain={() => void noted.again()} />
      {good === undefined ? null : (
        <>
          <Said seen={good} />
          <StatementSent
            which={{ ...whichOf(good, made), customerId: customer.id }}
            {...{ until: good.until, customer: customer.name, email: customer.email }}
          />
          <Sent seen={good} />
        </>
      )}
    </section>
  );
}

function whichOf(seen: Seen, made: Pick<Seen, 'from' | 'until' | 'asOf'> | null) {
  const { from, until } = seen;
  const asOf = made !== null && made.from === from && made.until === until ? made.asOf : seen.asOf;
  return { from, until, asOf };
}

function Said({ seen }: { readonly seen: Seen }) {
  const writing = useWriting();
  const { until, closing } = seen;
  const pastDue = seen.open.reduce((sum, one) => sum + (one.daysPastDue > 0 ? one.open : 0), 0);
  const alone = seen.unapplied.reduce((sum, one) => sum + one.sum, 0);
  if (seen.rows.length === 0 && closing === 0) return <p className="ink-2">{t('statement.nothing')}</p>;
  return (
    <p>
      {t('statement.closing', { day: civilText(until, writing) })}{' '}
      <MoneyText amount={closing} reckoning={seen.reckoning.closing} />{' '}
      {pastDue === 0 ? null : t('statement.pastDue', { sum: amountText(pastDue, writing) })}{' '}
      {alone === 0 ? null : t('statement.alone', { sum: amountText(alone, writing) })}
    </p>
  );
}

function Sent({ seen }: { readonly seen: Seen }) {
  const writing = useWriting();
  const now = useNow(60_000);
  return seen.sent.map((one) => (
    <p key={one.id} className="small ink-2">
      {t('statement.sentOn', {
        ...{ when: nearText(one.at, writing, now), how: one.how, sum: amountText(one.closing, writing) },
        day: civilText(one.until, writing),
      })}
    </p>
  ));
}
