import { useState } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { formatQuantity, parseQuantity } from '../../../core/measure/quantity.ts';
import { Button } from '../../parts/Button.tsx';
import { Cell } from '../../parts/Cell.tsx';
import { Field } from '../../parts/Field.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { act, ask } from '../../state/call.ts';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { useDo } from '../../state/use-do.ts';
import { quantityText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { dayText } from '../../words/times.ts';
import { unreadWords } from '../../words/unread.ts';
import { cellSaver } from './cell-saver.ts';
import { saidOfList } from './list-error.ts';
import { readWhole } from './read-whole.ts';

type Pump = OutputOf<'pump.list'>['rows'][number];

const STROKES_MOST = 10_000;

/** Pumps whose strokes count as litres, each with its last measured fill. */
export function Pumps() {
  const rows = useAsk('pump.list', {}).data?.rows.filter((pump) => !pump.takenOut) ?? [];
  return (
    <>
      <section>
        <p className="small ink-2">{t('tools.pumpsWords')}</p>
      </section>
      {rows.map((pump) => (
        <PumpPart key={pump.id} pump={pump} />
      ))}
      <NewPump />
    </>
  );
}

async function readPump(id: string) {
  const answer = await ask('pump.list', {});
  if (!answer.ok) return answer;
  const output = answer.output.rows.find((row) => row.id === id);
  return output === undefined
    ? ({ ok: false, error: { code: 'not-found', what: 'pump', id } } as const)
    : ({ ok: true, output } as const);
}

function PumpPart({ pump }: { readonly pump: Pump }) {
  const writing = useWriting();
  const change = useDo('pump.change');
  const measure = useDo('pump.calibrate');
  const [strokes, setStrokes] = useState('');
  const [litres, setLitres] = useState('');
  const [tried, setTried] = useState(false);
  const { calibration } = pump;
  const figures = { strokes: readWhole(strokes, 1, STROKES_MOST), quantity: parseQuantity(litres, writing) };
  const go = async () => {
    setTried(true);
    const { strokes: n, quantity } = figures;
    if (n === null || quantity === null || quantity <= 0) return;
    const answer = await measure.run({ pumpId: pump.id, strokes: n, quantity });
    if (!answer.ok) return;
    setStrokes('');
    setLitres('');
    setTried(false);
  };
  return (
    <section aria-label={pump.name}>
      <h3>{pump.name}</h3>
      <p>
        {calibration === null
          ? t('tools.notMeasured')
          : t('tools.measured', {
              n: calibration.strokes,
              litres: quantityText(calibration.quantity, 'L', writing),
              each: formatQuantity(calibration.perStroke, writing.decimal),
              by: calibration.by,
              day: dayText(calibration.at, writing, Date.now()),
            })}
      </p>
      <form
        className="shop-person"
        onSubmit={(event) => {
          event.preventDefault();
          void go();
        }}
      >
        <div className="field">
          <span className="small ink-2">{t('tools.pumpName')}</span>
          <Cell
            label={`${t('tools.pumpName')}, ${pump.name}`}
            value={pump.name}
            save={cellSaver<Pump, { readonly name: string }>({
              row: pump,
              show: (row) => row.name,
              read: (name) => (name.trim() === '' ? null : { name }),
              wrong: t('shop.nameNeeded'),
              send: (row, now) => act('pump.change', { id: row.id, revision: row.revision, change: now }),
              fresh: () => readPump(pump.id),
              say: saidOfList,
            })}
          />
        </div>
        <Field
          label={t('tools.strokesOf', { name: pump.name })}
          value={strokes}
          onChange={setStrokes}
          inputMode="numeric"
          error={tried && figures.strokes === null ? t('tools.strokesWrong') : null}
        />
        <Field
          label={t('tools.gave', { name: pump.name })}
          value={litres}
          onChange={setLitres}
          inputMode="decimal"
          error={tried && (figures.quantity ?? 0) <= 0 ? unreadWords(litres, writing, t('tools.litresWrong')) : null}
        />
        <Button type="submit" disabled={measure.busy} label={t('tools.measureOf', { name: pump.name })}>
          {t('tools.measure')}
        </Button>
        <Button
          small
          label={t('tools.pumpOutOf', { name: pump.name })}
          disabled={change.busy}
          onClick={() => void change.run({ id: pump.id, revision: pump.revision, change: { takenOut: true } })}
        >
          {t('shop.wrenchOut')}
        </Button>
      </form>
      <NotSaved error={measure.error ?? change.error} />
    </section>
  );
}

function NewPump() {
  const add = useDo('pump.add');
  const [name, setName] = useState('');
  const [tried, setTried] = useState(false);
  const go = async () => {
    setTried(true);
    if (name.trim() === '') return;
    const answer = await add.run({ name });
    if (!answer.ok) return;
    setName('');
    setTried(false);
  };
  return (
    <section>
      <h3>{t('tools.pumpAdd')}</h3>
      <form
        className="shop-person"
        onSubmit={(event) => {
          event.preventDefault();
          void go();
        }}
      >
        <Field
          label={t('tools.pumpName')}
          value={name}
          onChange={setName}
          maxLength={60}
          error={tried && name.trim() === '' ? t('shop.nameNeeded') : null}
        />
        <Button type="submit" disabled={add.busy}>
          {t('tools.pumpAdd')}
        </Button>
      </form>
      <NotSaved error={add.error} />
    </section>
  );
}
