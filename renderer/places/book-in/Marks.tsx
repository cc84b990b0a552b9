import { Field } from '../../parts/Field.tsx';
import { Tick } from '../../parts/Tick.tsx';
import { useAsk } from '../../state/use-ask.ts';
import { t } from '../../words/t.ts';
import type { Change, Draft, Errors } from './draft.ts';

interface Props {
  readonly draft: Draft;
  readonly change: Change;
  readonly errors: Errors;
}

/** Marks on the car: those of the last visit to be ticked still so, and new ones, a line each. */
export function Marks({ draft, change, errors }: Props) {
  const last = useAsk('car.get', draft.carId === null ? null : { id: draft.carId }).data?.visits[0]?.orderId;
  const before = useAsk('order.get', last === undefined ? null : { id: last }).data?.door.marks ?? [];
  const keep = (mark: string, still: boolean) =>
    change({ kept: still ? [...draft.kept, mark] : draft.kept.filter((one) => one !== mark) });
  return (
    <>
      {before.length === 0 ? null : (
        <fieldset className="choice">
          <legend>{t('intake.marksBefore')}</legend>
          <ul className="intake-marks">
            {before.map((mark) => (
              <li key={mark}>
                <span>{mark}</span>
                <Tick
                  ticked={draft.kept.includes(mark)}
                  onTick={(still) => keep(mark, still)}
                  label={t('intake.stillSo', { mark })}
                />
                <span aria-hidden="true">{t('intake.stillSoShort')}</span>
              </li>
            ))}
          </ul>
        </fieldset>
      )}
      <Field
        label={t('intake.marks')}
        value={draft.marks}
        onChange={(marks) => change({ marks })}
        lines={2}
        error={errors.marks ?? null}
      />
    </>
  );
}
