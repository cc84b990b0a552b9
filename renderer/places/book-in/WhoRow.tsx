import { useDeferredValue, useState } from 'react';
import { civilDateOf } from '../../../core/time/instant.ts';
import { Button } from '../../parts/Button.tsx';
import { Field } from '../../parts/Field.tsx';
import { useWriting } from '../../state/shop.ts';
import { useAsk, useAskAsTyped } from '../../state/use-ask.ts';
import { amountText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import type { Change, Draft, Errors } from './draft.ts';
import { knownCar, knownCustomer } from './known.ts';
import { EMPTY_WALK } from './mark-draft.ts';
import { Payer } from './Payer.tsx';
import { Talk } from './Talk.tsx';

interface Props {
  readonly draft: Draft;
  readonly change: Change;
  readonly errors: Errors;
}

/** Who: found while typing a phone, a name or a plate; else added. */
export function WhoRow({ draft, change, errors }: Props) {
  const [typed, setTyped] = useState('');
  const asked = useDeferredValue(typed.trim());
  const found = useAskAsTyped(
    'find.line',
    draft.customerId === null && asked.length > 1 ? { text: asked, most: 8 } : null,
  );
  const plate = useDeferredValue(draft.carId === null && draft.customerId === null ? draft.plate.trim() : '');
  const byPlate = useAskAsTyped('find.line', plate.length > 2 ? { text: plate, most: 4 } : null);
  const all = [...(found.data?.hits ?? []), ...(byPlate.data?.hits.filter((hit) => hit.kind === 'car') ?? [])];
  const hits = all.filter(
    (hit, at) => (hit.kind === 'customer' || hit.kind === 'car') && all.findIndex((one) => one.id === hit.id) === at,
  );

  const take = async (kind: string, id: string) => {
    const known = await (kind === 'customer' ? knownCustomer(id, null) : knownCar(id));
    if (known !== null) change(known);
  };
  const type = (field: 'phone' | 'name') => (text: string) => {
    setTyped(text);
    change({ [field]: text });
  };

  const known = draft.customerId !== null;
  return (
    <Talk head={t('intake.who')}>
      <div className="side-by-side">
        <Field
          label={t('intake.phone')}
          type="tel"
          value={draft.phone}
          onChange={type('phone')}
          readOnly={known}
          maxLength={40}
          error={errors.phone ?? null}
          autoFocus
        />
        <Field
          label={t('intake.name')}
          value={draft.name}
          onChange={type('name')}
          readOnly={known}
          maxLength={120}
          error={errors.name ?? null}
        />
        <Field
          label={t('intake.tellBy')}
          value={draft.tellBy}
          onChange={(tellBy) => change({ tellBy })}
          readOnly={known}
          maxLength={60}
        />
      </div>
      {hits.length > 0 && !known ? (
        <fieldset className="choice">
          <legend>{t('intake.known')}</legend>
          <div className="talk-hits">
            {hits.map((hit) => (
              <Button key={hit.id} small onClick={() => void take(hit.kind, hit.id)}>
                {hit.headline} {hit.detail}
              </Button>
            ))}
          </div>
        </fieldset>
      ) : null}
      {draft.customerId !== null ? (
        <Known
          id={draft.customerId}
          onOther={() =>
            change({
              customerId: null,
              carId: null,
              name: '',
              phone: '',
              tellBy: '',
              plate: '',
              words: '',
              vin: '',
              kept: [],
              walk: EMPTY_WALK,
              lookBy: '',
            })
          }
        />
      ) : draft.name.trim() !== '' ? (
        <p className="small ink-2">{t('intake.newPerson')}</p>
      ) : null}
      <Payer draft={draft} change={change} />
    </Talk>
  );
}

function Known({ id, onOther }: { readonly id: string; readonly onOther: () => void }) {
  const writing = useWriting();
  const customer = useAsk('customer.get', { id }).data;
  if (customer === undefined) return null;
  const { owed } = customer;
  return (
    <p className="small" role="status">
      {t('intake.knownSince', { n: customer.cars.length, year: civilDateOf(customer.since, writing.zone).slice(0, 4) })}{' '}
      {owed === null ? null : owed > 0 ? (
        <b className="in-heed">{t('intake.owes', { sum: amountText(owed, writing) })}</b>
      ) : (
        t('intake.owesNothing')
      )}{' '}
      {customer.fields.creditLimit === null ? null : <OnAccount id={id} />}{' '}
      <button type="button" className="link" onClick={onOther}>
        {t('intake.otherPerson')}
      </button>
    </p>
  );
}

/** Told while the car is booked in: an account that is over its limit, or how much room it has. */
function OnAccount({ id }: { readonly id: string }) {
  const writing = useWriting();
  const credit = useAsk('customer.credit', { id }).data;
  if (credit === undefined || credit.limit === null) return null;
  const room = credit.limit - credit.openInvoices - credit.authorised;
  return room < 0 ? (
    <b className="in-stop">{t('intake.overLimit', { sum: amountText(-room, writing) })}</b>
  ) : (
    t('intake.limitRoom', { sum: amountText(room, writing), limit: amountText(credit.limit, writing) })
  );
}
