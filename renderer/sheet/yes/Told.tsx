import { Field } from '../../parts/Field.tsx';
import { Tick } from '../../parts/Tick.tsx';
import { useShop } from '../../state/shop.ts';
import { t } from '../../words/t.ts';
import type { Job } from '../order.ts';
import type { Said } from './draft.ts';

/** Days until a job answered later is asked about again; the shop's own first. */
const ASK_IN = [14, 30, 90, 365] as const;

interface Props {
  readonly job: Job;
  readonly said: Said;
  readonly onSaid: (said: Partial<Said>) => void;
}

/** What a no or a later keeps on the car: what they were told, whether it is unsafe, when it is asked again. */
export function Told({ job, said, onSaid }: Props) {
  const settings = useShop()?.settings;
  const usual = settings?.followUpDays ?? 0;
  if (said.answer !== 'no' && said.answer !== 'later') return null;
  return (
    <div className="yes-told">
      <Field
        label={t('decision.risk')}
        value={said.risk}
        onChange={(risk) => onSaid({ risk })}
        placeholder={t('decision.riskHint')}
        maxLength={300}
      />
      <Tick ticked={said.unsafe} onTick={(unsafe) => onSaid({ unsafe })}>
        {t('decision.unsafe')}
      </Tick>
      {said.answer === 'no' && said.unsafe ? (
        <p className="small in-stop semi">{t('decision.needsSignature')}</p>
      ) : null}
      <label className="small">
        {t('decision.askIn')}{' '}
        <select
          aria-label={t('decision.askInOf', { letter: job.letter })}
          value={said.askInDays ?? ''}
          onChange={(event) => onSaid({ askInDays: event.target.value === '' ? null : Number(event.target.value) })}
        >
          <option value="">{t('decision.askUsual', { n: usual })}</option>
          {ASK_IN.filter((days) => days !== usual).map((days) => (
            <option key={days} value={days}>
              {t('decision.askDays', { n: days })}
            </option>
          ))}
        </select>
      </label>
    </div>
  );
}
