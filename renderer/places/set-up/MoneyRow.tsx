import { LINE_KINDS } from '../../../core/money/line.ts';
import { Button } from '../../parts/Button.tsx';
import { Choice, Choices } from '../../parts/Choice.tsx';
import { Field } from '../../parts/Field.tsx';
import { t } from '../../words/t.ts';
import { Talk } from '../book-in/Talk.tsx';
import { type Change, type Errors, newTax, type SetUpDraft, type TaxDraft } from './draft.ts';

interface Props {
  readonly draft: SetUpDraft;
  readonly change: Change;
  readonly errors: Errors;
}

const MOST_TAXES = 6;

/** Money: an hour of work, and taxes as the owner reads them in their own rule. */
export function MoneyRow({ draft, change, errors }: Props) {
  const changeTax = (id: string, part: Partial<TaxDraft>) =>
    change({ taxes: draft.taxes.map((tax) => (tax.id === id ? { ...tax, ...part } : tax)) });
  const nextId = `tax-${1 + Math.max(0, ...draft.taxes.map((tax) => Number(tax.id.slice(4))))}`;
  return (
    <Talk head={t('start.money')}>
      <div className="side-by-side">
        <Field
          label={t('start.hour')}
          value={draft.hour}
          onChange={(hour) => change({ hour })}
          inputMode="decimal"
          error={errors.hour ?? null}
        />
        <Choice
          label={t('start.prices')}
          value={draft.prices}
          options={[
            { value: 'exclusive', words: t('start.exclusive') },
            { value: 'inclusive', words: t('start.inclusive') },
          ]}
          onChange={(prices) => change({ prices })}
        />
      </div>
      {draft.taxes.map((tax, at) => (
        <Tax
          key={tax.id}
          tax={tax}
          n={at + 1}
          errors={errors}
          onChange={(part) => changeTax(tax.id, part)}
          onRemove={() => change({ taxes: draft.taxes.filter((one) => one.id !== tax.id) })}
        />
      ))}
      <p className="small ink-2">{t('start.taxHint')}</p>
      {draft.taxes.length < MOST_TAXES ? (
        <div>
          <Button small onClick={() => change({ taxes: [...draft.taxes, newTax(nextId)] })}>
            {t('start.anotherTax')}
          </Button>
        </div>
      ) : null}
    </Talk>
  );
}

interface TaxProps {
  readonly tax: TaxDraft;
  readonly n: number;
  readonly errors: Errors;
  readonly onChange: (part: Partial<TaxDraft>) => void;
  readonly onRemove: () => void;
}

function Tax({ tax, n, errors, onChange, onRemove }: TaxProps) {
  const kindsWrong = errors[`${tax.id} kinds`];
  return (
    <fieldset className="set-up-tax">
      <legend className="semi">{t('start.tax', { n })}</legend>
      <div className="side-by-side">
        <Field
          label={t('start.taxName')}
          value={tax.name}
          onChange={(name) => onChange({ name })}
          maxLength={60}
          error={errors[`${tax.id} name`] ?? null}
        />
        <Field
          label={t('start.taxRate')}
          value={tax.rate}
          onChange={(rate) => onChange({ rate })}
          inputMode="decimal"
          error={errors[`${tax.id} rate`] ?? null}
        />
        <Field
          label={t('start.source')}
          value={tax.source}
          onChange={(source) => onChange({ source })}
          maxLength={300}
        />
        <Field
          label={t('start.checkedOn')}
          type="date"
          past
          value={tax.checkedOn}
          onChange={(checkedOn) => onChange({ checkedOn })}
        />
      </div>
      <Choices
        label={t('start.taxKinds')}
        values={tax.kinds}
        options={LINE_KINDS.map((kind) => ({ value: kind, words: t(`start.${kind}`) }))}
        onChange={(kinds) => onChange({ kinds })}
      />
      {kindsWrong === undefined ? null : (
        <p className="wrong-words" role="alert">
          {kindsWrong}
        </p>
      )}
      <div>
        <button type="button" className="link" onClick={onRemove}>
          {t('start.removeTax', { n })}
        </button>
      </div>
    </fieldset>
  );
}
