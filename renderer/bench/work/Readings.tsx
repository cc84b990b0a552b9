import { type Marks, twoWays } from '../../../core/measure/quantity.ts';
import { Field } from '../../parts/Field.tsx';
import { useWriting } from '../../state/shop.ts';
import { t } from '../../words/t.ts';
import { unreadWords } from '../../words/unread.ts';
import { figureText } from '../figure-text.ts';
import { limitsText, type Step } from '../step-view.ts';

type Measure = NonNullable<Step['measure']>;

/** What somebody typed as a plain figure; null where it is none, or one of two. */
function readFigure(text: string, marks: Marks): number | null {
  const match = /^[+-]?(\d{1,6}|\d{0,6}[.,]\d{1,4})$/.exec(text.trim().replace('\u2212', '-'));
  return match === null || twoWays(text, marks) !== null
    ? null
    : Number(text.trim().replace('\u2212', '-').replace(',', '.'));
}

/** The figures that were read, one a place; null while one is missing or is no figure. */
export function readingsOf({ places }: Measure, typed: readonly string[], marks: Marks): number[] | null {
  const figures = Array.from({ length: places }, (_, place) => readFigure(typed[place] ?? '', marks));
  const read = figures.filter((figure) => figure !== null);
  return read.length === places ? read : null;
}

interface Props {
  readonly measure: Measure;
  readonly typed: readonly string[];
  readonly onChange: (typed: readonly string[]) => void;
  readonly source: string;
}

/** What is measured, at each of its places, against its limits and where those are from. */
export function Readings({ measure, typed, onChange, source }: Props) {
  const writing = useWriting();
  const places = Array.from({ length: measure.places }, (_, place) => place);
  return (
    <div className="readings">
      <p className="semi">{t('bench.measured', { what: measure.what, limits: limitsText(measure) })}</p>
      <div className="reading-fields">
        {places.map((place) => {
          const text = typed[place] ?? '';
          const figure = readFigure(text, writing);
          const error =
            text === ''
              ? null
              : figure === null
                ? unreadWords(text, writing, t('bench.noFigure'))
                : figure < measure.least
                  ? t('bench.under', { by: figureText(measure.least - figure), unit: measure.unit })
                  : figure > measure.most
                    ? t('bench.over', { by: figureText(figure - measure.most), unit: measure.unit })
                    : null;
          return (
            <Field
              key={place}
              figure
              inputMode="decimal"
              label={measure.places === 1 ? `${measure.what}, ${measure.unit}` : t('bench.place', { n: place + 1 })}
              value={text}
              error={error}
              onChange={(words) => onChange(places.map((at) => (at === place ? words : (typed[at] ?? ''))))}
            />
          );
        })}
      </div>
      <p className="small ink-2">{t('bench.figuresFrom', { source: source === '' ? t('bench.noSource') : source })}</p>
    </div>
  );
}
