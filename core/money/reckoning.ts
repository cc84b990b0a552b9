import type { ReckoningStep } from './line.ts';

/** Collects how figures came about, in the order in which they were worked. */
export interface Steps {
  add(rule: string, on: Readonly<Record<string, string | number>>, result: number): void;
  readonly all: readonly ReckoningStep[];
}

/** An empty list of steps. */
export function startSteps(): Steps {
  const all: ReckoningStep[] = [];
  return { all, add: (rule, on, result) => void all.push({ rule, on, result }) };
}
