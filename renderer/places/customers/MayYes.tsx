import { useState } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { Button } from '../../parts/Button.tsx';
import { Cell } from '../../parts/Cell.tsx';
import { Field } from '../../parts/Field.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { useWriting } from '../../state/shop.ts';
import { useDo } from '../../state/use-do.ts';
import { amountText, readAmount, type Writing } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { cellSaver } from './field-saver.ts';
import { savingOf } from './saving.ts';

type Customer = OutputOf<'customer.get'>;
type Fields = Customer['fields'];
type Named = Fields['mayYes'][number];

const MOST = 10;

/** A sum as typed: null for any sum, undefined where it is none. */
function limitOf(text: string, writing: Writing): number | null | undefined {
  if (text.trim() === '') return null;
  const sum = readAmount(text, writing);
  return sum === null || sum < 0 ? undefined : sum;
}

/** People who may say yes for this customer, and up to what sum. */
export function MayYes({ customer }: { readonly customer: Customer }) {
  const writing = useWriting();
  const change = useDo('customer.change');
  const how = savingOf(customer);
  const { mayYes } = customer.fields;
  // A row is named by its place, since its name is typed over.
  const rows = mayYes.map((one, at) => ({ one, at, key: `${at} of ${mayYes.length}` }));
  const put = (fields: Fields, at: number, part: Partial<Named>): Fields => ({
    ...fields,
    mayYes: fields.mayYes.map((one, i) => (i === at ? { ...one, ...part } : one)),
  });
  const set = (next: Named[]) => change.run({ id: customer.id, revision: customer.revision, change: { mayYes: next } });
  return (
    <>
      <p className="small ink-2">{t('customers.mayYesSelf', { name: customer.fields.name })}</p>
      {mayYes.length === 0 ? null : (
        <ul className="customer-named">
          {rows.map(({ one, at, key }) => (
            <li key={key}>
              <Cell
                label={t('customers.namedName', { n: at + 1 })}
                value={one.name}
                save={cellSaver<Fields>(
                  {
                    show: (fields) => fields.mayYes[at]?.name ?? '',
                    take: (name, fields) =>
                      name.trim() === '' ? t('customers.nameNeeded') : put(fields, at, { name: name.trim() }),
                  },
                  how,
                )}
              />
              <span className="in-stamp semi">
                {t('customers.yesUpTo')}
                <Cell
                  figure
                  label={t('customers.namedUpTo', { name: one.name })}
                  value={one.upTo === null ? '' : amountText(one.upTo, writing)}
                  placeholder={t('customers.anySum')}
                  save={cellSaver<Fields>(
                    {
                      show: (fields) => {
                        const upTo = fields.mayYes[at]?.upTo ?? null;
                        return upTo === null ? '' : amountText(upTo, writing);
                      },
                      take: (text, fields) => {
                        const upTo = limitOf(text, writing);
                        return upTo === undefined ? t('customers.upToWrong') : put(fields, at, { upTo });
                      },
                    },
                    how,
                  )}
                />
              </span>
              <button
                type="button"
                className="link small"
                disabled={change.busy}
                onClick={() => void set(mayYes.filter((_, i) => i !== at))}
              >
                {t('customers.noLonger', { name: one.name })}
              </button>
            </li>
          ))}
        </ul>
      )}
      <NotSaved error={change.error} />
      {mayYes.length < MOST ? <Another onAdd={async (one) => (await set([...mayYes, one])).ok} /> : null}
    </>
  );
}

function Another({ onAdd }: { readonly onAdd: (one: Named) => Promise<boolean> }) {
  const writing = useWriting();
  const [name, setName] = useState('');
  const [sum, setSum] = useState('');
  const [tried, setTried] = useState(false);
  const upTo = limitOf(sum, writing);
  const go = async () => {
    setTried(true);
    if (name.trim() === '' || upTo === undefined) return;
    if (!(await onAdd({ name: name.trim(), upTo }))) return;
    setName('');
    setSum('');
    setTried(false);
  };
  return (
    <form
      className="customer-another"
      onSubmit={(event) => {
        event.preventDefault();
        void go();
      }}
    >
      <Field
        label={t('customers.anotherName')}
        value={name}
        onChange={setName}
        maxLength={120}
        error={tried && name.trim() === '' ? t('customers.nameNeeded') : null}
      />
      <Field
        label={t('customers.anotherUpTo')}
        value={sum}
        onChange={setSum}
        inputMode="decimal"
        placeholder={t('customers.anySum')}
        error={tried && upTo === undefined ? t('customers.upToWrong') : null}
      />
      <Button type="submit">{t('customers.anotherAdd')}</Button>
    </form>
  );
}
