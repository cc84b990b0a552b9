import { bothUnits, type Stage } from './stage.ts';

/** What a procedure is checked by as it is written. */
export interface CheckedStep {
  readonly n: number;
  readonly do: string;
  readonly plug: '' | 'fill-opened' | 'drained';
  readonly torque: { readonly what: string; readonly stages: readonly Stage[] } | null;
  readonly oneTime: readonly { readonly part: string; readonly count: number }[];
  readonly recheckCard: boolean;
  readonly source: string;
}

export interface CheckedProcedure {
  readonly steps: readonly CheckedStep[];
  readonly sourceOfFigures: string;
  /** Parts and the rest that the job is charged with; quantities in thousandths. */
  readonly lines: readonly {
    readonly kind: string;
    readonly words: string;
    readonly condition: string | null;
    readonly quantity: number;
  }[];
}

/** What would mend a warning by itself; null where a person has to think. */
export type Mend =
  /** Move a step so that it stands in place `to`. */
  | { readonly what: 'move-step'; readonly step: number; readonly to: number }
  /** So many new ones are missing among the parts of the job. */
  | { readonly what: 'add-new-parts'; readonly part: string; readonly count: number }
  | { readonly what: 'add-recheck-card'; readonly step: number }
  | { readonly what: 'name-source'; readonly step: number };

export type ProcedureRule =
  | 'drain-before-fill'
  | 'one-time-twice'
  | 'one-time-without-new'
  | 'stage-lower'
  | 'wheel-without-card'
  | 'torque-without-source';

export interface ProcedureWarning {
  readonly rule: ProcedureRule;
  readonly step: number;
  readonly keepsFromBench: boolean;
  readonly mend: Mend | null;
}

/** A wrong order of the plugs, and a figure that nobody can look up: a draft may hold them, the bench may not. */
const KEEPS_FROM_BENCH: ReadonlySet<ProcedureRule> = new Set(['drain-before-fill', 'torque-without-source']);

/** Road wheels by name, in the languages of the papers; a wheel bearing or a wheel speed sensor is none. */
const WHEELS =
  /\bwheels?\b(?!\s+(?:bearing|hub|speed|arch|cylinder|sensor))|(?<!\p{L})(?:rad|räder|radschrauben|radmuttern|radbolzen)(?!\p{L})/iu;

/**
 * Warnings of a procedure (common practice, no source): oil drained before the fill plug is proved open; a one-time part
 * in a second step, or in its first, with no new one left among the job's parts; a torque stage lower than the one before;
 * road wheels tightened without a re-check card; torque figures without a named source. In the order of the steps.
 */
export function checkProcedure({ steps, sourceOfFigures, lines }: CheckedProcedure): ProcedureWarning[] {
  const warnings: ProcedureWarning[] = [];
  const used = new Map<string, number>();
  let fillOpen = false;
  for (const step of steps) {
    const warn = (rule: ProcedureRule, mend: Mend | null) =>
      warnings.push({ rule, step: step.n, keepsFromBench: KEEPS_FROM_BENCH.has(rule), mend });
    if (step.plug === 'fill-opened') fillOpen = true;
    if (step.plug === 'drained' && !fillOpen) {
      const fill = steps.find((one) => one.plug === 'fill-opened' && one.n > step.n);
      warn('drain-before-fill', fill === undefined ? null : { what: 'move-step', step: fill.n, to: step.n });
    }
    for (const { part, count } of step.oneTime) {
      const name = stem(part);
      const before = used.get(name) ?? 0;
      used.set(name, before + count);
      const missing = before + count - newOnes(lines, name);
      if (missing > 0)
        warn(before > 0 ? 'one-time-twice' : 'one-time-without-new', {
          what: 'add-new-parts',
          part: part.trim(),
          count: Math.min(missing, count),
        });
    }
    if (step.torque === null) continue;
    if (goesDown(step.torque.stages)) warn('stage-lower', null);
    if (WHEELS.test(step.torque.what || step.do) && !step.recheckCard)
      warn('wheel-without-card', { what: 'add-recheck-card', step: step.n });
    if (step.source.trim() === '' && sourceOfFigures.trim() === '')
      warn('torque-without-source', { what: 'name-source', step: step.n });
  }
  return warnings;
}

/** So many things there are to mend: all torques without a source are one, each other warning is one of its own. */
export function thingsToMend(warnings: readonly ProcedureWarning[]): number {
  const sourceless = warnings.filter((warning) => warning.rule === 'torque-without-source').length;
  return warnings.length - Math.max(0, sourceless - 1);
}

/** The name of a part without its case and its plural, so that “Ring bolts” on the sheet are the “ring bolt” of a step. */
const stem = (words: string): string => words.trim().toLowerCase().replace(/s$/, '');

/** New ones of a part that the job brings, whole pieces. */
function newOnes(lines: CheckedProcedure['lines'], name: string): number {
  const quantity = lines
    .filter((line) => line.kind === 'part' && (line.condition === null || line.condition === 'new'))
    .filter((line) => line.words.toLowerCase().includes(name))
    .reduce((all, line) => all + line.quantity, 0);
  return Math.floor(quantity / 1000);
}

function goesDown(stages: readonly Stage[]): boolean {
  const figures = stages.flatMap((stage) => bothUnits(stage)?.Nm ?? []);
  return figures.some((figure, at) => figure < (figures[at - 1] ?? 0));
}
