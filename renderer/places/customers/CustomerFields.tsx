import type { OutputOf } from '../../../core/contract/index.ts';
import { Cell } from '../../parts/Cell.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { useSession } from '../../state/session.ts';
import { useWriting } from '../../state/shop.ts';
import { useDo } from '../../state/use-do.ts';
import { amountText, readAmount } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { cellSaver, fieldSaver } from './field-saver.ts';
import { savingOf } from './saving.ts';

type Customer = OutputOf<'customer.get'>;

const REACH = ['name', 'phone', 'phone2', 'email', 'tellBy'] as const;
const TERMS = ['taxNumber', 'taxExempt'] as const;
const MOST_LINES = 4;

interface Props {
  readonly customer: Customer;
}

/** How to reach them; each cell saves on leaving it. */
export function Reach({ customer }: Props) {
  const how = savingOf(customer);
  return (
    <dl className="list-fields">
      {REACH.map((field) => (
        <div key={field}>
          <dt>{t(`customers.${field}`)}</dt>
          <dd>
            <Cell label={t(`customers.${field}`)} value={customer.fields[field]} save={fieldSaver(field, how)} />
          </dd>
        </div>
      ))}
      <div>
        <dt>{t('customers.address')}</dt>
        <dd>
          <Cell
            label={t('customers.address')}
            value={customer.fields.address.join(', ')}
            save={cellSaver(
              {
                show: (fields) => fields.address.join(', '),
                take: (text, fields) => {
                  const address = text
                    .split(',')
                    .map((line) => line.trim())
                    .filter((line) => line !== '');
                  return address.length > MOST_LINES ? t('customers.addressLong') : { ...fields, address };
                },
              },
              how,
            )}
          />
        </dd>
      </div>
    </dl>
  );
}

/** What papers to them need: their tax number, why they bear no tax, their own order number. */
export function Terms({ customer }: Props) {
  const change = useDo('customer.change');
  const how = savingOf(customer);
  const { id, revision } = customer;
  return (
    <>
      <dl className="list-fields">
        {TERMS.map((field) => (
          <div key={field}>
            <dt>{t(`customers.${field}`)}</dt>
            <dd>
              <Cell label={t(`customers.${field}`)} value={customer.fields[field]} save={fieldSaver(field, how)} />
            </dd>
          </div>
        ))}
        <div>
          <dt>{t('customers.creditLimit')}</dt>
          <dd>
            <CreditLimit customer={customer} />
          </dd>
        </div>
      </dl>
      <Choice
        label={t('customers.po')}
        value={customer.fields.poRequired ? customer.fields.poBefore : 'none'}
        options={(['none', 'invoice', 'work'] as const).map((value) => ({ value, words: t(`customers.po-${value}`) }))}
        onChange={(po) =>
          void change.run({
            ...{ id, revision },
            change: po === 'none' ? { poRequired: false } : { poRequired: true, poBefore: po },
          })
        }
      />
      <Choice
        label={t('customers.language')}
        value={customer.fields.language ?? ''}
        options={[
          { value: '', words: t('customers.language-shop') },
          { value: 'en', words: 'English' },
          { value: 'de', words: 'Deutsch' },
        ]}
        onChange={(language) => void change.run({ id, revision, change: { language: language || null } })}
      />
      <NotSaved error={change.error} />
    </>
  );
}

/** How much an account may owe; the owner's to set. */
function CreditLimit({ customer }: Props) {
  const writing = useWriting();
  const owner = useSession((session) => session.person?.role === 'owner');
  const show = (limit: number | null) => (limit === null ? '' : amountText(limit, writing));
  return (
    <Cell
      label={t('customers.creditLimit')}
      value={show(customer.fields.creditLimit)}
      placeholder={t('customers.creditLimitNone')}
      readOnly={!owner}
      save={cellSaver<Customer['fields']>(
        {
          show: (fields) => show(fields.creditLimit),
          take: (text, fields) => {
            const creditLimit = text.trim() === '' ? null : readAmount(text, writing);
            const wrong = creditLimit === null ? text.trim() !== '' : creditLimit < 0;
            return wrong ? t('customers.creditLimitWrong') : { ...fields, creditLimit };
          },
        },
        savingOf(customer),
      )}
    />
  );
}

/** What is good to know of them, in one cell. */
export function Note({ customer }: Props) {
  return (
    <Cell
      className="customer-note"
      label={t('customers.note')}
      value={customer.fields.note}
      placeholder={t('customers.noteHint')}
      save={fieldSaver('note', savingOf(customer))}
    />
  );
}
