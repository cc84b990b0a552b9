import { useState } from 'react';
import type { InputOf, OutputOf } from '../../../core/contract/index.ts';
import { convert } from '../../../core/measure/unit.ts';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import type { Job, Order } from '../../sheet/order.ts';
import { useNow } from '../../state/now.ts';
import { useShop, useWriting } from '../../state/shop.ts';
import { tap, tapsOf, useTaps } from '../../state/taps.ts';
import { useAsk } from '../../state/use-ask.ts';
import { quantityText, type Writing } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { dayText } from '../../words/times.ts';
import { Stepper } from '../Stepper.tsx';
import type { Step } from '../step-view.ts';
import { type Unit, UnitOfCar } from './UnitOfCar.tsx';

type Amount = InputOf<'fluid.record'>['amount'];
type Last = OutputOf<'fluid.lastTimes'>['rows'][number];

interface Props {
  readonly order: Order;
  readonly job: Job;
  readonly step: Step;
  readonly direction: 'in' | 'out';
  readonly fluid: { readonly what: string; readonly quantity: number };
  readonly held: string | null;
}

const NO_UNIT: Unit = { name: '', serial: '' };
const LITRES = 'L';
const QUARTS = 'US qt';
/** One press: a tenth of a litre or quart, one stroke; in thousandths. */
const PRESS = { volume: 100, strokes: 1000 };

/** What went in or came out: by litres, quarts or strokes of a calibrated pump, with last time's fill offered. */
export function FluidWork({ order, job, step, direction, fluid, held }: Props) {
  const writing = useWriting();
  const rows = useAsk('fluid.list', { orderId: order.id }).data?.rows ?? [];
  const pumps = (useAsk('pump.list', {}).data?.rows ?? []).filter(
    (pump) => !pump.takenOut && pump.calibration !== null,
  );
  const taps = useTaps((state) => state.taps);
  const here = rows.filter((row) => row.jobId === job.id && row.step === step.n && row.direction === direction);
  const last = rows.findLast((row) => !row.undone)?.unit ?? NO_UNIT;
  const [picked, setUnit] = useState<Unit | null>(null);
  const unit = picked ?? last;
  const times = useAsk('fluid.lastTimes', {
    jobId: job.id,
    step: step.n,
    unit: unit.name === '' ? null : unit,
  }).data;
  const volume = useShop()?.settings?.volume ?? LITRES;
  const [measured, setMeasure] = useState<string | null>(null);
  const measure = measured ?? volume;
  const [value, setValue] = useState<number | null>(null);
  const pump = pumps.find((one) => one.id === measure);
  const waiting = tapsOf(taps, 'fluid.record').filter(
    ({ input }) => input.jobId === job.id && input.step === step.n && input.direction === direction,
  );

  const record = () => {
    if (value === null || value <= 0) return;
    const amount: Amount =
      pump === undefined
        ? { value, in: measure === QUARTS ? QUARTS : LITRES }
        : { strokes: Math.round(value / 1000), pumpId: pump.id };
    const entry = { jobId: job.id, step: step.n, unit, direction, fluid: fluid.what, amount };
    void tap('fluid.record', entry).then(() => setValue(null));
  };
  const why =
    held ?? (unit.name === '' ? t('bench.unitFirst') : value === null || value <= 0 ? t('bench.howMuchFirst') : null);
  return (
    <div className="fluid-work">
      <h3>{t(direction === 'in' ? 'bench.wentIn' : 'bench.cameOut', { what: fluid.what })}</h3>
      <p className="ink-2">
        {t('bench.bookSays', { quantity: bothVolumes(fluid.quantity, volume, writing) })}
        {direction === 'in' && times?.level ? ` ${t('bench.level', { words: times.level })}` : ''}
      </p>
      {direction === 'in' ? (
        <LastTimes
          rows={times?.rows ?? []}
          onTake={(row) => {
            const same = row.strokes === null ? undefined : pumps.find((one) => one.name === row.pump);
            setMeasure(same?.id ?? LITRES);
            setValue(same === undefined || row.strokes === null ? row.quantity : row.strokes * 1000);
          }}
        />
      ) : null}
      {here.length === 0 && waiting.length === 0 ? null : (
        <ul className="fluid-kept">
          {here.map((row) => (
            <li key={row.id} className={row.undone ? 'undone' : ''}>
              {row.unit.name}, {amountWords(row, writing)}, {row.by}
              {row.undone || held !== null ? null : (
                <button type="button" className="link" onClick={() => void tap('fluid.undo', { id: row.id })}>
                  {t('bench.takeBack')}
                </button>
              )}
            </li>
          ))}
          {waiting.map((one) => (
            <li key={one.place}>{t('bench.waits')}</li>
          ))}
        </ul>
      )}
      <UnitOfCar
        value={unit}
        onChange={setUnit}
        known={[...rows.map((row) => row.unit.name), ...(times?.rows ?? []).map((row) => row.unit.name)]}
      />
      <Choice
        joined
        label={t('bench.by')}
        value={measure}
        options={[
          { value: LITRES, words: t('bench.litres') },
          { value: QUARTS, words: t('bench.quarts') },
          ...pumps.map((one) => ({ value: one.id, words: t('bench.strokesOf', { pump: one.name }) })),
        ]}
        onChange={setMeasure}
      />
      <Stepper
        label={t('bench.howMuch')}
        value={value}
        onChange={setValue}
        step={pump === undefined ? PRESS.volume : PRESS.strokes}
        unit={pump === undefined ? (measure === QUARTS ? 'qt' : 'L') : t('bench.strokes')}
      />
      {pump?.calibration == null || value === null ? null : (
        <p className="ink-2">
          {t('bench.strokesMake', {
            quantity: quantityText(Math.round(((value / 1000) * pump.calibration.perStroke) / 1000), 'L', writing),
          })}
        </p>
      )}
      <Button held={why} onClick={record}>
        {t(direction === 'in' ? 'bench.recordIn' : 'bench.recordOut')}
      </Button>
    </div>
  );
}

/** "1.1 L" or "53 strokes of Pump A, 1.11 L". */
function amountWords(row: { entered: Amount; quantity: number; pump: string }, writing: Writing): string {
  const litres = quantityText(row.quantity, 'L', writing);
  if ('strokes' in row.entered) return t('bench.strokesWere', { n: row.entered.strokes, pump: row.pump, litres });
  const entered = quantityText(row.entered.value, row.entered.in, writing);
  return row.entered.in === LITRES ? entered : `${entered} (${litres})`;
}

/** Litres, with US quarts before them in a shop that works in quarts. */
function bothVolumes(litres: number, first: 'L' | 'US qt', writing: Writing): string {
  const plain = quantityText(litres, 'L', writing);
  if (first === 'L') return plain;
  // To a hundredth of a quart, which no dipstick shows.
  const quarts = Math.round(convert('volume', litres, 'L', 'US qt') / 10) * 10;
  return `${quantityText(quarts, 'qt', writing)} (${plain})`;
}

function LastTimes({ rows, onTake }: { readonly rows: readonly Last[]; readonly onTake: (row: Last) => void }) {
  const writing = useWriting();
  const now = useNow(60_000);
  if (rows.length === 0) return <p className="small ink-2">{t('bench.neverFilled')}</p>;
  return (
    <ul className="last-fills">
      {rows.slice(0, 3).map((row) => {
        const amount =
          row.strokes === null
            ? quantityText(row.quantity, 'L', writing)
            : t('bench.strokesWere', {
                n: row.strokes,
                pump: row.pump,
                litres: quantityText(row.quantity, 'L', writing),
              });
        return (
          <li key={`${row.orderNumber} ${row.at}`}>
            <button type="button" className="button" onClick={() => onTake(row)}>
              {t(`bench.last-${row.same}`, { day: dayText(row.at, writing, now), amount, car: row.car })}
            </button>
          </li>
        );
      })}
    </ul>
  );
}
