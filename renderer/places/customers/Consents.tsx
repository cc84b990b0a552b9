import { useState } from 'react';
import type { InputOf, OutputOf } from '../../../core/contract/index.ts';
import {
  CONSENT_ANSWERS,
  CONSENTS,
  type Consent,
  type ConsentAnswer,
  consentAnswer,
  consentStands,
} from '../../../core/customer/consent.ts';
import { civilDateOf } from '../../../core/time/instant.ts';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { Field } from '../../parts/Field.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { useWriting } from '../../state/shop.ts';
import { useDo } from '../../state/use-do.ts';
import { t } from '../../words/t.ts';
import { civilText } from '../../words/times.ts';

type Customer = OutputOf<'customer.get'>;
type Way = InputOf<'customer.consent'>['way'];

const WAYS = ['person', 'signed', 'phone', 'message', 'mail', 'letter'] as const satisfies readonly Way[];
const ANSWER_WORDS = { yes: 'intake.yes', no: 'intake.no', unasked: 'intake.notAsked' } as const;

/** What they agreed to, with when and how; not asked is neither yes nor no. */
export function Consents({ customer }: { readonly customer: Customer }) {
  return CONSENTS.map((what) => <One key={what} customer={customer} what={what} />);
}

interface Props {
  readonly customer: Customer;
  readonly what: Consent;
}

/** One thing they were asked: their answer, and the way to write down another one. */
function One({ customer, what }: Props) {
  const standing = consentAnswer(customer.fields.consents?.[what]);
  const [next, setNext] = useState<ConsentAnswer | null>(null);
  return (
    <div className="consent">
      <Choice
        label={t(`customers.consent-${what}`)}
        value={next ?? standing}
        options={CONSENT_ANSWERS.map((value) => ({ value, words: t(ANSWER_WORDS[value]) }))}
        onChange={(answer) => setNext(answer === standing ? null : answer)}
      />
      {next === null ? (
        <Said customer={customer} what={what} />
      ) : (
        <WriteDown {...{ customer, what }} answer={next} onDone={() => setNext(null)} />
      )}
    </div>
  );
}

/** When and how it was said; before anything was written down of that, that it was not. */
function Said({ customer, what }: Props) {
  const writing = useWriting();
  const stands = consentStands(customer.consents, what);
  const standing = consentAnswer(customer.fields.consents?.[what]);
  if (stands === null || stands.row.answer !== standing)
    return standing === 'unasked' ? null : <p className="small ink-2">{t('customers.consentUnknown')}</p>;
  const { row, withdrawn } = stands;
  const before = withdrawn ? customer.consents.filter((one) => one.what === what).at(-2) : undefined;
  const said = (one: typeof row) => ({
    day: civilText(one.on, writing),
    way: t(`customers.consentWay-${one.way}`),
    by: one.by,
  });
  return (
    <p className="small ink-2">
      {t(withdrawn ? 'customers.consentWithdrawn' : 'customers.consentSaid', said(row))}
      {before === undefined ? null : ` ${t('customers.consentBefore', said(before))}`}
    </p>
  );
}

/** How and on which day they said it; kept with whoever writes it down. */
function WriteDown({ customer, what, answer, onDone }: Props & { answer: ConsentAnswer; onDone: () => void }) {
  const writing = useWriting();
  const record = useDo('customer.consent');
  const today = civilDateOf(Date.now(), writing.zone);
  const [way, setWay] = useState<Way>('person');
  const [on, setOn] = useState(today);
  const wrong = on === '' || on > today;
  const go = async () => {
    if (wrong) return;
    const { id, revision } = customer;
    if ((await record.run({ id, revision, what, answer, way, on })).ok) onDone();
  };
  return (
    <form
      className="contact-draft"
      aria-label={t('customers.consentHow', { what: t(`customers.consent-${what}`) })}
      onSubmit={(event) => {
        event.preventDefault();
        void go();
      }}
    >
      <Choice
        label={t('customers.consentWay')}
        value={way}
        options={WAYS.map((value) => ({ value, words: t(`customers.consentWay-${value}`) }))}
        onChange={setWay}
      />
      <Field
        label={t('customers.consentOn')}
        type="date"
        value={on}
        onChange={setOn}
        error={wrong ? t('customers.consentOnWrong') : null}
      />
      <div className="contact-acts">
        <Button small type="submit" disabled={record.busy}>
          {t('contact.keep')}
        </Button>
        <Button small onClick={onDone}>
          {t('contact.leave')}
        </Button>
      </div>
      <NotSaved error={record.error} onAgain={() => void record.again()} />
    </form>
  );
}
