import { Choice } from '../../parts/Choice.tsx';
import { Field } from '../../parts/Field.tsx';
import { t } from '../../words/t.ts';
import type { Change, Draft, Errors } from './draft.ts';
import { Talk } from './Talk.tsx';

const FUEL = ['empty', 'quarter', 'half', 'threeQuarters', 'full'] as const;

interface Props {
  readonly draft: Draft;
  readonly change: Change;
  readonly errors: Errors;
}

/** What is taken over at the door: keys, fuel, marks, and what may be done with the car. */
export function DoorRow({ draft, change, errors }: Props) {
  return (
    <Talk head={t('intake.door')}>
      <Choice
        label={t('intake.here')}
        value={draft.here ? 'here' : 'coming'}
        options={[
          { value: 'here', words: t('intake.hereNow') },
          { value: 'coming', words: t('intake.stillToCome') },
        ]}
        onChange={(where) => change({ here: where === 'here' })}
      />
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
      <div className="side-by-side">
        <Field label={t('intake.marks')} value={draft.marks} onChange={(marks) => change({ marks })} lines={3} />
        <Field
          label={t('intake.valuables')}
          value={draft.valuables}
          onChange={(valuables) => change({ valuables })}
          lines={3}
          maxLength={200}
        />
      </div>
      <div className="side-by-side">
        <Choice
          label={t('intake.drive')}
          value={draft.drive}
          options={[
            { value: 'not-asked', words: t('intake.notAsked') },
            { value: 'yes', words: t('intake.yes') },
            { value: 'no', words: t('intake.no') },
          ]}
          onChange={(drive) => change({ drive })}
        />
        {draft.drive === 'yes' ? (
          <Field
            label={t('intake.driveLimit')}
            value={draft.driveLimit}
            onChange={(driveLimit) => change({ driveLimit })}
            maxLength={60}
          />
        ) : null}
      </div>
      <Choice
        label={t('intake.oldParts')}
        value={draft.oldParts}
        options={[
          { value: 'unasked', words: t('intake.notAsked') },
          { value: 'show', words: t('intake.show') },
          { value: 'return', words: t('intake.return') },
          { value: 'dispose', words: t('intake.dispose') },
        ]}
        onChange={(oldParts) => change({ oldParts })}
      />
    </Talk>
  );
}
