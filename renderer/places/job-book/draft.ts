import { create } from 'zustand';
import type { OutputOf } from '../../../core/contract/index.ts';

export type BookJob = OutputOf<'jobBook.get'>;
export type Content = BookJob['content'];
export type Step = Content['steps'][number];
export type BookLine = Content['lines'][number];

/** A job as somebody is writing it: nothing of it is in the shop until it is kept as a version. */
export interface Draft {
  /** The version it was begun from; 0 for a new job. */
  readonly basedOn: number;
  readonly content: Content;
}

const useDrafts = create<{ readonly drafts: Readonly<Record<string, Draft>> }>(() => ({ drafts: {} }));

/** The draft of a job by its id, or undefined; it outlives going to another place and back. */
export const useDraft = (id: string): Draft | undefined => useDrafts((state) => state.drafts[id]);
export const draftNow = (id: string): Draft | undefined => useDrafts.getState().drafts[id];

export function keepDraft(id: string, draft: Draft): void {
  useDrafts.setState(({ drafts }) => ({ drafts: { ...drafts, [id]: draft } }));
}

export function dropDraft(id: string): void {
  useDrafts.setState(({ drafts }) => ({
    drafts: Object.fromEntries(Object.entries(drafts).filter(([key]) => key !== id)),
  }));
}

export const EMPTY_JOB: Content = {
  title: '',
  car: '',
  people: 1,
  bookHours: 0,
  fixedPrice: null,
  sourceOfFigures: '',
  lines: [],
  steps: [],
  cautions: [],
  finalCheckId: null,
  after: [],
  goesWith: [],
};

/**
 * Steps in their order, numbered anew from 1; what a step says of later steps goes with them, and is forgotten of those
 * that are gone or stand before it now.
 */
export function numbered(steps: readonly Step[]): Step[] {
  const now = new Map<number, number>();
  for (const [at, step] of steps.entries()) if (!now.has(step.n)) now.set(step.n, at + 1);
  return steps.map((step, at) => ({
    ...step,
    n: at + 1,
    reopens:
      step.reopens
        ?.map((n) => now.get(n) ?? 0)
        .filter((to) => to > at + 1)
        .sort((a, b) => a - b) ?? null,
  }));
}

/** The steps with one of them moved to stand before another place. */
export function moved(steps: readonly Step[], from: number, to: number): Step[] {
  const step = steps[from];
  if (step === undefined || to < 0 || to >= steps.length) return [...steps];
  const rest = steps.filter((_, at) => at !== from);
  return numbered([...rest.slice(0, to), step, ...rest.slice(to)]);
}

/** A step of these words; its number comes with its place. */
export const newStep = (words: string): Step => ({
  n: 0,
  do: words,
  tool: '',
  hold: '',
  second: '',
  care: '',
  plug: '',
  torque: null,
  oneTime: [],
  fluidIn: null,
  fluidOut: null,
  level: '',
  sample: null,
  measure: null,
  photoWanted: false,
  reopens: null,
  recheckCard: false,
  source: '',
});

export const newTorque = (): NonNullable<Step['torque']> => ({
  what: '',
  pattern: 'ring',
  count: 4,
  degrees: [],
  rows: [],
  sides: 1,
  stages: [{ Nm: 1 }],
  checkRound: false,
  thread: null,
  extension: null,
});

export const newLine = (kind: BookLine['kind'], words: string, quantity: number, unit: string): BookLine => ({
  kind,
  words,
  partNumber: '',
  condition: null,
  quantity,
  unit,
  unitPrice: null,
  unitCost: null,
  supplier: '',
});

/** The content with something else in one of its steps. */
export const withStep = (content: Content, n: number, part: Partial<Step>): Content => ({
  ...content,
  steps: content.steps.map((step) => (step.n === n ? { ...step, ...part } : step)),
});
