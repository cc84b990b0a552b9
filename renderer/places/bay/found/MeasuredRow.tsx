import { useState } from 'react';
import { Stepper } from '../../../bench/Stepper.tsx';
import { Choice } from '../../../parts/Choice.tsx';
import { Field } from '../../../parts/Field.tsx';
import { useAsk } from '../../../state/use-ask.ts';
import { t } from '../../../words/t.ts';
import { LimitScale } from './LimitScale.tsx';
import type { Measuring } from './limit.ts';

interface Props {
  readonly value: Measuring;
  readonly onChange: (measuring: Measuring) => void;
  /** What is usually measured at such a thing: "play". */
  readonly usual: string;
  /** The part in hand: limits of the shop's own lists that name it are offered. */
  readonly part: string;
}

const UNITS = ['mm', 'bar', 'V', '%', 'N·m'] as const;
/** One press, thousandths. */
const PRESS = 100;

/** What was measured against its limit, and where the limit is from; or that it cannot be measured. */
export function MeasuredRow({ value, onChange, usual, part }: Props) {
  const [more, setMore] = useState(false);
  const change = (to: Partial<Measuring>) => onChange({ ...value, ...to });
  const known = useKnownLimits(part);
  return (
    <section className="measured" aria-label={t('found.measured')}>
      <h2>
        {t('found.measured')} <small>{value.what === '' ? usual : value.what}</small>
      </h2>
      <Stepper
        label={t('found.measured')}
        value={value.value}
        onChange={(figure) => change({ value: figure })}
        step={PRESS}
        unit={value.unit}
      />
      <LimitScale measuring={value} />
      {known.length === 0 ? null : (
        <div className="choice-row">
          {known.map((one) => (
            <button
              key={`${one.what} ${one.source}`}
              type="button"
              className="chip"
              onClick={() => change({ ...one, value: value.value })}
            >
              {t('found.knownLimit', { what: one.what, limit: `${(one.limit ?? 0) / 1000} ${one.unit}` })}
            </button>
          ))}
        </div>
      )}
      {value.limit === null || more ? null : (
        <p className="ink-2">
          {value.source === '' ? t('found.limitNoSource') : t('found.limitFrom', { source: value.source })}
        </p>
      )}
      {more ? (
        <div className="measured-more">
          <Field
            label={t('found.what')}
            value={value.what}
            placeholder={usual}
            maxLength={80}
            onChange={(what) => change({ what })}
          />
          <Choice
            joined
            label={t('found.unit')}
            value={value.unit}
            options={UNITS.map((unit) => ({ value: unit, words: unit }))}
            onChange={(unit) => change({ unit })}
          />
          <Choice
            joined
            label={t('found.limitIs')}
            value={value.side}
            options={[
              { value: 'most', words: t('found.atMost') },
              { value: 'least', words: t('found.atLeast') },
            ]}
            onChange={(side) => change({ side })}
          />
          <Stepper
            label={t('found.limitFigure')}
            value={value.limit}
            onChange={(limit) => change({ limit })}
            step={PRESS}
            unit={value.unit}
          />
          <Field
            label={t('found.limitSource')}
            value={value.source}
            maxLength={200}
            onChange={(source) => change({ source })}
          />
        </div>
      ) : null}
      <p className="measured-links">
        <button type="button" className="link" aria-expanded={more} onClick={() => setMore(!more)}>
          {t(more ? 'found.lessOfIt' : 'found.limitAndUnit')}
        </button>
        {value.value === null ? null : (
          <button type="button" className="link" onClick={() => change({ value: null })}>
            {t('found.cannot')}
          </button>
        )}
      </p>
    </section>
  );
}

/** Limits of the shop's own lists whose item names the part. */
function useKnownLimits(part: string): Measuring[] {
  const lists = useAsk('checkList.list', {}).data?.rows ?? [];
  const wanted = part.trim().toLowerCase();
  if (wanted === '') return [];
  return lists
    .filter((list) => !list.takenOut)
    .flatMap((list) => list.items)
    .filter((item) => item.measure !== null && item.words.toLowerCase().includes(wanted))
    .flatMap(({ measure }) => {
      if (measure === null) return [];
      const limit = measure.most ?? measure.least;
      if (limit === null) return [];
      const { what, unit, source } = measure;
      return [
        {
          what,
          unit,
          value: null,
          side: measure.most === null ? ('least' as const) : ('most' as const),
          limit,
          source,
        },
      ];
    })
    .slice(0, 3);
}
