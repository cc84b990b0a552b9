import { useState } from 'react';
import type { OutputOf } from '../../../../core/contract/index.ts';
import { parseQuantity } from '../../../../core/measure/quantity.ts';
import { civilDateOf } from '../../../../core/time/instant.ts';
import { Button } from '../../../parts/Button.tsx';
import { Field } from '../../../parts/Field.tsx';
import { NotSaved } from '../../../parts/Notice.tsx';
import { useWriting } from '../../../state/shop.ts';
import { useAsk } from '../../../state/use-ask.ts';
import { useDo } from '../../../state/use-do.ts';
import { quantityText } from '../../../words/figures.ts';
import { t } from '../../../words/t.ts';
import { civilText } from '../../../words/times.ts';

type Pump = OutputOf<'pump.list'>['rows'][number];

/** Every pump with its measured fill; measured anew and taken out of use where it stands. */
export function Pumps() {
  const { data } = useAsk('pump.list', {});
  const [adding, setAdding] = useState(false);
  return (
    <>
      {data?.rows.length === 0 ? <p className="ink-2">{t('fluids.noPumps')}</p> : null}
      <ul className="fluid-rows">
        {(data?.rows ?? []).map((pump) => (
          <PumpRow key={pump.id} pump={pump} />
        ))}
      </ul>
      {adding ? (
        <NewPump close={() => setAdding(false)} />
      ) : (
        <div>
          <Button onClick={() => setAdding(true)}>{t('fluids.add')}</Button>
        </div>
      )}
    </>
  );
}

function PumpRow({ pump }: { readonly pump: Pump }) {
  const writing = useWriting();
  const change = useDo('pump.change');
  const calibrate = useDo('pump.calibrate');
  const [open, setOpen] = useState(false);
  const { calibration } = pump;
  const said = [
    pump.takenOut ? t('fluids.out') : '',
    calibration === null
      ? t('fluids.never')
      : t('fluids.gives', {
          strokes: calibration.strokes,
          quantity: quantityText(calibration.quantity, 'L', writing),
          // Millionths of a litre are thousandths of a millilitre.
          each: quantityText(calibration.perStroke, 'mL', writing),
        }),
    calibration === null
      ? ''
      : t('fluids.measuredBy', {
          day: civilText(civilDateOf(calibration.at, writing.zone), writing),
          by: calibration.by,
        }),
  ].filter((part) => part !== '');
  const turn = () => void change.run({ id: pump.id, revision: pump.revision, change: { takenOut: !pump.takenOut } });
  return (
    <li>
      <div className="fluid-row">
        <b>{pump.name}</b>
        <span>{said.join(', ')}</span>
        <span className="fluid-acts">
          {pump.takenOut ? null : (
            <button type="button" className="link" onClick={() => setOpen(!open)} aria-expanded={open}>
              {t(calibration === null ? 'fluids.measure' : 'fluids.measureAgain')}{' '}
              <span className="aloud">{pump.name}</span>
            </button>
          )}
          <button type="button" className="link" onClick={turn}>
            {t(pump.takenOut ? 'fluids.putBack' : 'fluids.takeOut')} <span className="aloud">{pump.name}</span>
          </button>
        </span>
      </div>
      <NotSaved error={change.error} />
      {open ? (
        <Measured
          busy={calibrate.busy}
          close={() => setOpen(false)}
          keep={async (fill) => {
            if ((await calibrate.run({ pumpId: pump.id, ...fill })).ok) setOpen(false);
          }}
        />
      ) : null}
      <NotSaved error={calibrate.error} />
    </li>
  );
}

interface Fill {
  readonly strokes: number;
  readonly quantity: number;
}

/** What was typed as a measured fill; null where it is none. */
function readFill(strokes: string, gave: string): { strokes: number | null; quantity: number | null } {
  const quantity = parseQuantity(gave);
  return {
    strokes: /^[1-9]\d{0,3}$/.test(strokes.trim()) ? Number(strokes) : null,
    quantity: quantity !== null && quantity > 0 ? quantity : null,
  };
}

interface MeasuredProps {
  readonly busy: boolean;
  readonly keep: (fill: Fill) => Promise<void>;
  readonly close: () => void;
}

function Measured({ busy, keep, close }: MeasuredProps) {
  const [strokes, setStrokes] = useState('');
  const [gave, setGave] = useState('');
  const [tried, setTried] = useState(false);
  const read = readFill(strokes, gave);
  return (
    <form
      className="side-by-side"
      onSubmit={(event) => {
        event.preventDefault();
        setTried(true);
        if (read.strokes !== null && read.quantity !== null)
          void keep({ strokes: read.strokes, quantity: read.quantity });
      }}
    >
      <Field
        label={t('fluids.strokes')}
        value={strokes}
        onChange={setStrokes}
        inputMode="numeric"
        figure
        autoFocus
        error={tried && read.strokes === null ? t('fluids.strokesWrong') : null}
      />
      <Field
        label={t('fluids.gave')}
        value={gave}
        onChange={setGave}
        inputMode="decimal"
        figure
        error={tried && read.quantity === null ? t('fluids.gaveWrong') : null}
      />
      <div className="fluid-acts fluid-go">
        <Button type="submit" disabled={busy}>
          {t('fluids.keep')}
        </Button>
        <Button onClick={close}>{t('fluids.leave')}</Button>
      </div>
    </form>
  );
}

function NewPump({ close }: { readonly close: () => void }) {
  const add = useDo('pump.add');
  const [name, setName] = useState('');
  const [tried, setTried] = useState(false);
  const go = async () => {
    setTried(true);
    if (name.trim() === '') return;
    if ((await add.run({ name: name.trim() })).ok) close();
  };
  return (
    <form
      className="side-by-side"
      onSubmit={(event) => {
        event.preventDefault();
        void go();
      }}
    >
      <Field
        label={t('fluids.name')}
        value={name}
        onChange={setName}
        maxLength={60}
        autoFocus
        error={tried && name.trim() === '' ? t('fluids.nameNeeded') : null}
      />
      <div className="fluid-acts fluid-go">
        <Button type="submit" disabled={add.busy}>
          {t('fluids.add')}
        </Button>
        <Button onClick={close}>{t('fluids.leave')}</Button>
      </div>
      <NotSaved error={add.error} />
    </form>
  );
}
