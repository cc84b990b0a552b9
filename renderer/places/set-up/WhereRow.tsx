import { Choice } from '../../parts/Choice.tsx';
import { Field } from '../../parts/Field.tsx';
import { t } from '../../words/t.ts';
import { Pick, Talk } from '../book-in/Talk.tsx';
import { countryName, USAGES, usageOf } from './countries.ts';
import type { Change, Errors, SetUpDraft } from './draft.ts';

interface Props {
  readonly draft: SetUpDraft;
  readonly change: Change;
  readonly errors: Errors;
}

/** Where: a country fills what does no harm, and each of it may be changed. */
export function WhereRow({ draft, change, errors }: Props) {
  const go = (country: string) => {
    const usage = usageOf(country);
    if (usage === undefined) return;
    const { code, ...rest } = usage;
    change({ ...rest, country: code });
  };
  return (
    <Talk head={t('start.where')}>
      <div className="side-by-side">
        <Pick
          label={t('start.country')}
          value={draft.country}
          options={USAGES.map(({ code }) => ({ value: code, words: countryName(code) }))}
          onChange={go}
        />
        <Field
          label={t('start.currency')}
          value={draft.currency}
          onChange={(currency) => change({ currency: currency.toUpperCase() })}
          maxLength={3}
          error={errors.currency ?? null}
        />
        <Field
          label={t('start.zone')}
          value={draft.zone}
          onChange={(zone) => change({ zone })}
          maxLength={60}
          error={errors.zone ?? null}
        />
      </div>
      <div className="side-by-side">
        <Choice
          label={t('start.paper')}
          value={draft.paper}
          options={[
            { value: 'A4', words: 'A4' },
            { value: 'Letter', words: 'Letter' },
          ]}
          onChange={(paper) => change({ paper })}
        />
        <Choice
          label={t('start.distance')}
          value={draft.distance}
          options={[
            { value: 'km', words: t('start.kilometres') },
            { value: 'mi', words: t('start.miles') },
          ]}
          onChange={(distance) => change({ distance })}
        />
        <Choice
          label={t('start.torque')}
          value={draft.torque}
          options={[
            { value: 'N·m', words: 'N·m' },
            { value: 'lbf·ft', words: 'lbf·ft' },
          ]}
          onChange={(torque) => change({ torque })}
        />
      </div>
      <p className="small ink-2">{t('start.fromCountry')}</p>
    </Talk>
  );
}
