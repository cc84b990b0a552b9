import type { InputOf, OutputOf } from '../../core/contract/index.ts';
import { formatQuantity, type Marks, parseQuantity } from '../../core/measure/quantity.ts';

export type Sample = OutputOf<'sample.list'>['rows'][number];
export type Metal = OutputOf<'sample.trend'>['metals'][number];
type LabMetal = InputOf<'sample.result'>['result']['metals'][number];

/** The metals that have fields of their own, in this order; others follow by their sign. */
export const USUAL = ['Fe', 'Cu', 'Cr', 'Al', 'Si'] as const;

/** Samples of one unit of the car, newest first. */
export interface UnitSamples {
  readonly key: string;
  readonly rows: readonly Sample[];
  /** The last one that the lab answered. */
  readonly answered: Sample | null;
}

/** The car's samples by unit: by its serial, else by its name. The unit sampled last comes first. */
export function byUnit(samples: readonly Sample[]): UnitSamples[] {
  const groups = Map.groupBy(samples, ({ unit }) => unit.serial || unit.name.toLowerCase());
  return [...groups].map(([key, rows]) => ({
    key,
    rows,
    answered: rows.find(({ result }) => result !== null) ?? null,
  }));
}

/** Metals in the order that they are shown. */
export function inOrder(metals: readonly Metal[]): Metal[] {
  const place = ({ element }: Metal) => {
    const at = (USUAL as readonly string[]).indexOf(element);
    return at < 0 ? USUAL.length : at;
  };
  return metals.toSorted((a, b) => place(a) - place(b) || a.element.localeCompare(b.element));
}

/** What is typed of an answer: figures as text. */
export interface AnswerDraft {
  readonly ppm: Readonly<Record<string, string>>;
  readonly limit: Readonly<Record<string, string>>;
  readonly others: string;
  readonly viscosity: string;
  readonly water: string;
}

/** An answer as it was kept, to be changed. Others keep the lab's limits only where they have fields. */
export function draftOf(result: Sample['result'], decimal: string): AnswerDraft {
  const metals = result?.metals ?? [];
  const text = (figure: number | null | undefined) =>
    figure === null || figure === undefined ? '' : formatQuantity(figure, decimal);
  const usual = metals.filter(({ element }) => (USUAL as readonly string[]).includes(element));
  const others = metals.filter((metal) => !usual.includes(metal));
  return {
    ppm: Object.fromEntries(usual.map(({ element, ppm }) => [element, text(ppm)])),
    limit: Object.fromEntries(usual.map(({ element, limit }) => [element, text(limit)])),
    others: others.map(({ element, ppm }) => `${element} ${formatQuantity(ppm, decimal)}`).join(', '),
    viscosity: text(result?.viscosity),
    water: text(result?.water),
  };
}

/** Empty is null; undefined for what is no figure, or below nothing. */
function figure(text: string | undefined, marks: Marks): number | null | undefined {
  if (text === undefined || text.trim() === '') return null;
  const read = parseQuantity(text, marks);
  return read === null || read < 0 ? undefined : read;
}

export interface AnswerRead {
  readonly result: InputOf<'sample.result'>['result'] | null;
  /** The names of fields that cannot be read. */
  readonly wrong: ReadonlySet<string>;
}

/** Reads a draft: figures with up to three decimals; the others as 'Ni 4, Pb 2.5'. */
export function readAnswer(draft: AnswerDraft, marks: Marks): AnswerRead {
  const wrong = new Set<string>();
  const read = (name: string, text: string | undefined) => {
    const value = figure(text, marks);
    if (value === undefined) wrong.add(name);
    return value ?? null;
  };
  const metals = USUAL.flatMap((element): LabMetal[] => {
    const ppm = read(`ppm-${element}`, draft.ppm[element]);
    const limit = read(`limit-${element}`, draft.limit[element]);
    return ppm === null ? [] : [{ element, ppm, limit }];
  });
  for (const part of draft.others.split(/;|,(?!\d)/).filter((one) => one.trim() !== '')) {
    const [, element, ppm] = /^\s*([A-Z][a-z]?)\s+(\d+(?:[.,]\d{1,3})?)\s*$/.exec(part) ?? [];
    const value = figure(ppm, marks);
    if (element === undefined || value === null || value === undefined) wrong.add('others');
    else if (metals.some((metal) => metal.element === element)) wrong.add('others');
    else metals.push({ element, ppm: value, limit: null });
  }
  const viscosity = read('viscosity', draft.viscosity);
  const water = read('water', draft.water);
  return { result: wrong.size > 0 ? null : { metals, viscosity, water }, wrong };
}
