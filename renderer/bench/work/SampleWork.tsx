import { useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Field } from '../../parts/Field.tsx';
import { Tick } from '../../parts/Tick.tsx';
import type { Job, Order } from '../../sheet/order.ts';
import { Wrong } from '../../sheet/Wrong.tsx';
import { ask } from '../../state/call.ts';
import type { CallError } from '../../state/transport.ts';
import { useAsk } from '../../state/use-ask.ts';
import { useDo } from '../../state/use-do.ts';
import { t } from '../../words/t.ts';
import { savePdf } from '../save-pdf.ts';
import type { Step } from '../step-view.ts';
import { type Unit, UnitOfCar } from './UnitOfCar.tsx';

interface Props {
  readonly order: Order;
  readonly job: Job;
  readonly step: Step;
  readonly held: string | null;
}

/** A sample of fluid drawn at a step: of which unit, how far the fluid was in, and the label for the bottle. */
export function SampleWork({ order, job, step, held }: Props) {
  const rows = (useAsk('sample.list', { orderId: order.id }).data?.rows ?? []).filter(
    (row) => row.jobId === job.id && row.step === step.n,
  );
  const drawn = useDo('sample.draw');
  const fluids = useAsk('fluid.list', { orderId: order.id }).data?.rows ?? [];
  const [picked, setUnit] = useState<Unit | null>(null);
  // What was drained just before is what is sampled.
  const unit = picked ?? fluids.findLast((row) => !row.undone)?.unit ?? { name: '', serial: '' };
  const [distance, setDistance] = useState('');
  const [starts, setStarts] = useState(false);
  const fluid = step.fluidOut?.what ?? step.sample?.words ?? '';
  const whole = /^\d{1,7}$/.test(distance.trim()) ? Number(distance) : null;
  const why = held ?? (unit.name === '' ? t('bench.unitFirst') : null);
  return (
    <div className="fluid-work">
      <h3>{t('bench.sample', { n: step.sample?.millilitres ?? 0 })}</h3>
      {step.sample?.words ? <p className="ink-2">{step.sample.words}</p> : null}
      {rows.map((row) => (
        <p key={row.id} className="sample-label">
          {t('bench.sampleDrawn', { label: row.label, unit: row.unit.name, by: row.drawnBy })}{' '}
          <LabelButton id={row.id} />
        </p>
      ))}
      {rows.length > 0 ? null : (
        <>
          <UnitOfCar value={unit} onChange={setUnit} known={fluids.map((row) => row.unit.name)} />
          <div className="work-fields">
            <Field
              label={t('bench.fluidWasIn', { unit: order.car.unit })}
              inputMode="numeric"
              figure
              value={distance}
              onChange={setDistance}
              error={distance !== '' && whole === null ? t('bench.noFigure') : null}
            />
          </div>
          <Tick ticked={starts} onTick={setStarts}>
            {t('bench.startsHistory')}
          </Tick>
          <Wrong error={drawn.error} />
          <Button
            held={why}
            disabled={drawn.busy}
            onClick={() =>
              void drawn.run({
                orderId: order.id,
                jobId: job.id,
                step: step.n,
                unit,
                fluid: fluid === '' ? t('bench.someOil') : fluid.slice(0, 80),
                distance: whole,
                mileage: order.mileageIn,
                startsHistory: starts,
              })
            }
          >
            {t('bench.drawSample')}
          </Button>
        </>
      )}
    </div>
  );
}

/** The label of a bottle, made when it is wanted. */
function LabelButton({ id }: { readonly id: string }) {
  const [error, setError] = useState<CallError | null>(null);
  const print = async () => {
    const answer = await ask('sample.label', { id });
    setError(answer.ok ? null : answer.error);
    if (answer.ok) savePdf(answer.output.name, answer.output.base64);
  };
  return (
    <>
      <button type="button" className="link" onClick={() => void print()}>
        {t('bench.printLabel')}
      </button>
      <Wrong error={error} />
    </>
  );
}
