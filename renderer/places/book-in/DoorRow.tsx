import { Choice } from '../../parts/Choice.tsx';
import { Field } from '../../parts/Field.tsx';
import { t } from '../../words/t.ts';
import type { Change, Draft, Errors } from './draft.ts';
import { Marks } from './Marks.tsx';
import { Talk } from './Talk.tsx';

const FUEL = ['empty', 'quarter', 'half', 'threeQuarters', 'full'] as const;

interface Props {
  readonly draft: Draft;
  readonly change: Change;
  readonly errors: Errors;
  /** Whether it may still be to come. */
  readonly coming?: boolean;
}

/** What is taken over at the door: the car with its marks, keys, fuel, and what lies in it. */
export function DoorRow({ draft, change, errors, coming = true }: Props) {
  return (
    <Talk head={t('intake.door')}>
      <Choice
        label={t('intake.here')}
        value={draft.night ? 'night' : draft.here ? 'here' : 'coming'}
        options={[
          { value: 'here', words: t('intake.hereNow') },
          { value: 'night', words: t('intake.night') },
          ...(coming ? [{ value: 'coming', words: t('intake.stillToCome') } as const] : []),
        ]}
        onChange={(where) =>
          change({
            ...{ here: where !== 'coming', night: where === 'night' },
            ...(where === 'night' ? { lookWay: 'phone', storageTold: false, strokes: null, onPaper: false } : {}),
          })
        }
      />
      {draft.night ? <p className="small ink-2">{t('intake.nightWords')}</p> : null}
      <Marks draft={draft} change={change} errors={errors} />
      <div className="side-by-side">
        <Field
          label={t('intake.keys')}
          value={draft.keys}
          onChange={(keys) => change({ keys })}
          inputMode="numeric"
          maxLength={1}
          error={errors.keys ?? null}
        />
        <Field
          label={t('intake.keysWhere')}
          value={draft.keysWhere}
          onChange={(keysWhere) => change({ keysWhere })}
          maxLength={60}
        />
        <Field
          label={t('intake.wheelLock')}
          value={draft.wheelLockKey}
          onChange={(wheelLockKey) => change({ wheelLockKey })}
          maxLength={60}
        />
      </div>
      <Choice
        label={t('intake.fuel')}
        value={draft.fuel}
        options={[
          { value: '', words: t('intake.unasked') },
          ...FUEL.map((key) => ({ value: t(`intake.${key}`), words: t(`intake.${key}`) })),
        ]}
        onChange={(fuel) => change({ fuel })}
      />
      <Field
        label={t('intake.valuables')}
        value={draft.valuables}
        onChange={(valuables) => change({ valuables })}
        maxLength={200}
      />
    </Talk>
  );
}
