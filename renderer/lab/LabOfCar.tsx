import type { OutputOf } from '../../core/contract/index.ts';
import { useWriting } from '../state/shop.ts';
import { useAsk } from '../state/use-ask.ts';
import { quantityText, type Writing, wholeText } from '../words/figures.ts';
import { t } from '../words/t.ts';
import { LabRuler } from './LabRuler.tsx';
import { byUnit, inOrder, type Metal, type Sample, type UnitSamples } from './lab-series.ts';
import { metalName } from './metal-name.ts';
import { SampleRows } from './SampleRows.tsx';
import './lab.css';

type Trend = OutputOf<'sample.trend'>;

interface Props {
  readonly carId: string;
  /** How far the car had gone, by order. */
  readonly visits: readonly { readonly id: string; readonly distance: number }[];
  /** All distances that stand on the car's own ruler. */
  readonly life: readonly number[];
}

/** Every unit of the car that was sampled: the lab's figures on the car's own line, its word, and the samples. */
export function LabOfCar({ carId, visits, life }: Props) {
  const units = byUnit(useAsk('sample.list', { carId }).data?.rows ?? []);
  return units.map((unit) => <LabOfUnit key={unit.key} unit={unit} visits={visits} life={life} />);
}

function LabOfUnit({ unit, visits, life }: { readonly unit: UnitSamples } & Omit<Props, 'carId'>) {
  const writing = useWriting();
  const { rows, answered } = unit;
  const trend = useAsk('sample.trend', answered === null ? null : { id: answered.id }).data;
  const [newest] = rows;
  if (newest === undefined) return null;
  const { name, serial } = newest.unit;
  const words = t(serial === '' ? 'lab.unit' : 'lab.unitSerial', { name, serial });
  const metals = inOrder(trend?.metals ?? []);
  const at = distances(rows, visits, new Set(trend?.samples.map(({ id }) => id)));
  const drawn = metals.length > 0 && at.size > 0 && life.length > 0;
  return (
    <section className="car-part">
      <h2>
        {t('lab.head', { fluid: newest.fluid })} <span className="car-beside">{words}</span>
      </h2>
      {answered === null ? null : (
        <p>{answered.remark === '' ? t('lab.noRemark') : t('lab.remark', { remark: answered.remark })}</p>
      )}
      {drawn ? <LabRuler label={spoken(newest, words, metals, writing)} metals={metals} at={at} life={life} /> : null}
      {trend === undefined ? null : <Hints trend={trend} metals={metals} writing={writing} />}
      <SampleRows rows={rows} />
    </section>
  );
}

/** Where the samples of this history stand on the car's line: where their visit stands, else at their own reading. */
function distances(rows: readonly Sample[], visits: Props['visits'], history: ReadonlySet<string>) {
  return new Map(
    rows.flatMap((row): [string, number][] => {
      const distance = visits.find((visit) => visit.id === row.orderId)?.distance ?? row.mileage;
      return distance === null || !history.has(row.id) ? [] : [[row.id, distance]];
    }),
  );
}

function spoken(sample: Sample, unit: string, metals: readonly Metal[], writing: Writing): string {
  const each = metals.map(({ element, points }) =>
    t('lab.said', {
      metal: metalName(element),
      figures: points.map(({ ppm }) => quantityText(ppm, '', writing)).join(', '),
    }),
  );
  return [t('lab.ruler', { fluid: sample.fluid, unit }), ...each].join('. ');
}

/** What the unit's own run says of the last figures, in words; where nothing can be said, why. */
function Hints({ trend, metals, writing }: { trend: Trend; metals: readonly Metal[]; writing: Writing }) {
  const judged = metals.filter(({ says }) => says !== 'none');
  const out = judged.filter(({ says }) => says !== 'normal');
  // Two decimals are more than such a rate is worth.
  const figure = (rate: number | null) => quantityText(Math.round((rate ?? 0) / 10) * 10, '', writing);
  const [silent] = metals.filter(({ says, because }) => says === 'none' && because !== 'no-result');
  if (judged.length === 0) {
    const because = silent?.because ?? '';
    if (silent === undefined || because === '') return null;
    const fewest = because === 'short-distance' ? wholeText(trend.fewestKm, writing) : trend.fewestSamples;
    return <p className="ink-2">{t(`lab.${because}`, { n: silent.count, fewest })}</p>;
  }
  return (
    <>
      {out.map((metal) => (
        <p key={metal.element} className={metal.says === 'alarm' ? 'in-stop' : ''}>
          {t(metal.says === 'alarm' ? 'lab.alarm' : 'lab.alert', {
            metal: metalName(metal.element),
            rate: figure(metal.points.at(-1)?.rate ?? null),
            mean: figure(metal.mean),
            n: metal.count,
            limit: figure(metal.says === 'alarm' ? metal.alarm : metal.alert),
          })}
        </p>
      ))}
      {out.length > 0 ? null : <p>{t('lab.normal', { n: Math.max(...judged.map(({ count }) => count)) })}</p>}
      <p className="ink-2">{t('lab.hint')}</p>
    </>
  );
}
