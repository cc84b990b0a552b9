import { performance } from 'node:perf_hooks';

/** A row of the table: milliseconds of ours and of the limit, measured in turns in one run. */
export interface Measured {
  readonly what: string;
  readonly limit: string;
  readonly ours: number;
  readonly bare: number;
  readonly ratio: number;
  /** The ratio that is aimed at; null: told only. */
  readonly goal: number | null;
}

type Work = (turn: number) => unknown;

const middle = (figures: readonly number[], share = 0.5) =>
  figures.toSorted((a, b) => a - b)[Math.min(figures.length - 1, Math.floor(figures.length * share))] ?? Number.NaN;

async function timed(work: Work, turn: number): Promise<number> {
  const from = performance.now();
  await work(turn);
  return performance.now() - from;
}

/**
 * Ours against the limit, turn by turn in one run, so that a busy machine slows both; medians, or a higher share where
 * the slow ones matter. The first tenth warms up and is not counted.
 */
export async function measure(
  row: { what: string; limit: string; goal: number | null; turns: number; share?: number },
  ours: Work,
  bare: Work,
): Promise<Measured> {
  const times: { ours: number[]; bare: number[] } = { ours: [], bare: [] };
  const warm = Math.ceil(row.turns / 10);
  for (let turn = 0; turn < row.turns + warm; turn++) {
    const [first, second] = turn % 2 === 0 ? (['ours', 'bare'] as const) : (['bare', 'ours'] as const);
    for (const which of [first, second]) {
      const took = await timed(which === 'ours' ? ours : bare, turn);
      if (turn >= warm) times[which].push(took);
    }
  }
  const [a, b] = [middle(times.ours, row.share), middle(times.bare, row.share)];
  return { what: row.what, limit: row.limit, ours: a, bare: b, ratio: a / b, goal: row.goal };
}

const figure = (value: number) => (value >= 100 ? value.toFixed(0) : value >= 1 ? value.toFixed(2) : value.toFixed(3));

/** The table as text: a ratio over its goal is marked. */
export function table(rows: readonly Measured[]): string {
  const lines = rows.map(({ what, limit, ours, bare, ratio, goal }) => [
    what,
    limit,
    figure(ours),
    figure(bare),
    `${ratio.toFixed(2)}x`,
    goal === null ? '' : `${goal}x${ratio > goal ? ' over' : ''}`,
  ]);
  const all = [['what', 'limit in the same run', 'ours', 'limit', 'ratio', 'goal'], ...lines];
  const widths = all[0]?.map((_, k) => Math.max(...all.map((line) => (line[k] ?? '').length))) ?? [];
  return all
    .map((line) =>
      line
        .map((cell, k) => cell.padEnd(widths[k] ?? 0))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}
