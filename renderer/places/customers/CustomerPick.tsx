import { useDeferredValue, useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Field } from '../../parts/Field.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { useAsk } from '../../state/use-ask.ts';
import { useDo } from '../../state/use-do.ts';
import { t } from '../../words/t.ts';

interface Props {
  readonly label: string;
  /** Whom it may not be. */
  readonly not: string | null;
  readonly onPick: (customer: { readonly id: string; readonly name: string }) => void;
}

const FEWEST = 2;

/** A customer found by name or phone as one types, or added by the name typed. */
export function CustomerPick({ label, not, onPick }: Props) {
  const [text, setText] = useState('');
  const add = useDo('customer.add');
  const asked = useDeferredValue(text.trim());
  const typed = asked.length >= FEWEST;
  const found = useAsk('customer.list', typed ? { text: asked, most: 6 } : null).data?.rows ?? [];
  // Also whoever is written otherwise: another order of the names, a number with its country.
  const alike =
    useAsk('customer.doubles', typed ? { name: asked, phones: [asked.slice(0, 40)] } : null).data?.rows ?? [];
  const rows = [...found, ...alike.filter((one) => !found.some((row) => row.id === one.id))];
  const addNew = async () => {
    const answer = await add.run({ name: text });
    if (answer.ok) onPick({ id: answer.output.id, name: text.trim() });
  };
  return (
    <>
      <Field label={label} value={text} onChange={setText} maxLength={120} autoFocus />
      {typed ? (
        <fieldset className="choice">
          <legend>{t('customers.which')}</legend>
          <div className="talk-hits">
            {rows
              .filter((row) => row.id !== not)
              .map((row) => (
                <Button key={row.id} small onClick={() => onPick(row)}>
                  {row.name} {row.phone}
                </Button>
              ))}
            <Button small disabled={add.busy} onClick={() => void addNew()}>
              {t('customers.addNamed', { name: asked })}
            </Button>
          </div>
        </fieldset>
      ) : null}
      <NotSaved error={add.error} />
    </>
  );
}
