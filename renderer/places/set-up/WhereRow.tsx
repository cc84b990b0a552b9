import { useId, useState } from 'react';
import type { DateForm } from '../../../core/time/date-form.ts';
import { Choice } from '../../parts/Choice.tsx';
import { Field } from '../../parts/Field.tsx';
import { amountText, PLAIN_WRITING, wholeText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { civilText } from '../../words/times.ts';
import { Pick, Talk } from '../book-in/Talk.tsx';
import { countryName, USAGES, usageOf } from './countries.ts';
import type { Change, Errors, SetUpDraft } from './draft.ts';

interface Props {
  readonly draft: SetUpDraft;
  readonly change: Change;
  readonly errors: Errors;
}

/** Where: a country fills what does no harm, says so in a sentence, and each of it may be changed. */
export function WhereRow({ draft, change, errors }: Props) {
  const [opened, open] = useState(false);
  const zones = useId();
  const wrong = errors.currency !== undefined || errors.zone !== undefined;
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
          label={t('start.zone')}
          value={draft.zone}
          onChange={(zone) => change({ zone })}
          maxLength={60}
          list={zones}
          error={errors.zone ?? null}
        />
        <datalist id={zones}>
          {Intl.supportedValuesOf('timeZone').map((zone) => (
            <option key={zone} value={zone} />
          ))}
        </datalist>
      </div>
      <p className="small">
        <b>{t('start.fromCountryHead')}</b> {usageSentence(draft)}{' '}
        <button type="button" className="link" aria-expanded={opened || wrong} onClick={() => open(!opened)}>
          {t(opened ? 'start.changeNone' : 'start.changeOne')}
        </button>
      </p>
      {opened || wrong ? <Usages draft={draft} change={change} errors={errors} /> : null}
    </Talk>
  );
}

const DATES = ['language', 'day-month', 'month-day', 'year-month'] as const;
/** A day whose parts cannot be taken for one another. */
const EXAMPLE_DAY = '2026-09-23';
const dateWords = (dateForm: DateForm) => civilText(EXAMPLE_DAY, { ...PLAIN_WRITING, dateForm });

function usageSentence(draft: SetUpDraft): string {
  return t('start.usage', {
    sum: `${draft.currency} ${amountText(123_456, { ...draft, zone: 'UTC', language: 'en' })}`,
    tax: t(draft.prices === 'inclusive' ? 'start.usageInclusive' : 'start.usageExclusive'),
    paper: draft.paper,
    distance: t(draft.distance === 'km' ? 'start.kilometres' : 'start.miles'),
    torque: draft.torque,
    date: dateWords(draft.dateForm),
  });
}

function Usages({ draft, change, errors }: Props) {
  const figure = wholeText(1234, { ...draft, zone: 'UTC', language: 'en' });
  return (
    <>
      <div className="side-by-side">
        <Field
          label={t('start.currency')}
          value={draft.currency}
          onChange={(currency) => change({ currency: currency.toUpperCase() })}
          maxLength={3}
          error={errors.currency ?? null}
        />
        <Choice
          label={t('start.decimal')}
          value={draft.decimal}
          options={[
            { value: '.', words: '0.50' },
            { value: ',', words: '0,50' },
          ]}
          onChange={(decimal) =>
            change({ decimal, ...(draft.group === decimal ? { group: decimal === ',' ? '.' : ',' } : {}) })
          }
        />
        <Pick
          label={t('start.group', { figure })}
          value={draft.group}
          options={([',', '.', ' ', ''] as const)
            .filter((sign) => sign !== draft.decimal)
            .map((sign) => ({ value: sign, words: `1${sign}234` }))}
          onChange={(sign) => change({ group: ([',', '.', ' '] as const).find((one) => one === sign) ?? '' })}
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
        <Pick
          label={t('own.dateForm')}
          value={draft.dateForm}
          options={DATES.map((value) => ({ value, words: dateWords(value) }))}
          onChange={(picked) => change({ dateForm: DATES.find((one) => one === picked) ?? 'language' })}
        />
      </div>
    </>
  );
}
