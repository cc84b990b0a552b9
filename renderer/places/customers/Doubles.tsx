import { useState } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { hrefOf } from '../../frame/router.ts';
import { Button } from '../../parts/Button.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { useDo } from '../../state/use-do.ts';
import { t } from '../../words/t.ts';
import { dayText } from '../../words/times.ts';

type Customer = OutputOf<'customer.get'>;
type Alike = OutputOf<'customer.doubles'>['rows'][number];

/** Entries that may be the same person, to be joined into this one; and those that were, to be parted again. */
export function Doubles({ customer }: { readonly customer: Customer }) {
  const writing = useWriting();
  const part = useDo('customer.part');
  const { name, phone, phone2, email } = customer.fields;
  const gone = customer.joinedInto;
  const phones = [phone, phone2].filter((one) => one !== '');
  const alike = useAsk('customer.doubles', gone === null ? { name, phones, email, exceptId: customer.id } : null);
  const rows = alike.data?.rows ?? [];
  if (gone !== null)
    return (
      <p className="in-heed semi" role="status">
        {t('customers.joinedInto')} <a href={hrefOf('customers', gone.id)}>{gone.name}</a>
      </p>
    );
  if (rows.length === 0 && customer.joined.length === 0) return null;
  return (
    <section className="customer-part customer-doubles" aria-label={t('customers.doubles')}>
      {rows.length === 0 ? null : <h2>{t('customers.doubles')}</h2>}
      <ul className="customer-rows">
        {rows.map((row) => (
          <Double key={row.id} row={row} customer={customer} />
        ))}
        {customer.joined.map((one) => (
          <li key={one.joinId} className="customer-double">
            <span>{t('customers.joinedOn', { name: one.name, day: dayText(one.at, writing, Date.now()) })}</span>
            <Button small disabled={part.busy} onClick={() => void part.run({ joinId: one.joinId })}>
              {t('customers.part')}
            </Button>
          </li>
        ))}
      </ul>
      <NotSaved error={part.error} />
    </section>
  );
}

function Double({ row, customer }: { readonly row: Alike; readonly customer: Customer }) {
  const writing = useWriting();
  const join = useDo('customer.join');
  const [asked, setAsked] = useState(false);
  const go = () =>
    join.run({ fromId: row.id, fromRevision: row.revision, intoId: customer.id, intoRevision: customer.revision });
  return (
    <li>
      <div className="customer-double">
        <span>
          <a href={hrefOf('customers', row.id)}>{row.name}</a>{' '}
          {[row.phone, row.email, ...row.cars].filter((one) => one !== '').join(', ')}{' '}
          <span className="small ink-2">
            {row.lastVisit === null ? '' : `${dayText(row.lastVisit, writing, Date.now())}, `}
            {t('customers.alikeBy', { what: row.by.map((by) => t(`customers.by-${by}`)).join(', ') })}
          </span>
        </span>
        {asked ? null : (
          <Button small onClick={() => setAsked(true)} label={t('customers.joinOf', { name: row.name })}>
            {t('customers.join')}
          </Button>
        )}
      </div>
      {asked ? (
        <div className="contact-acts">
          <span>{t('customers.joinWords', { name: row.name, into: customer.fields.name })}</span>
          <Button small disabled={join.busy} onClick={() => void go()}>
            {t('customers.joinGo')}
          </Button>
          <Button small onClick={() => setAsked(false)}>
            {t('contact.leave')}
          </Button>
        </div>
      ) : null}
      <NotSaved error={join.error} />
    </li>
  );
}
