import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test, vi } from 'vitest';

// Each run is a process of its own.
vi.setConfig({ testTimeout: 60_000 });

const root = fileURLToPath(new URL('../..', import.meta.url));
const scratch = mkdtempSync(join(tmpdir(), 'crownwheel-figures-'));
afterAll(() => rmSync(scratch, { recursive: true }));

/** Runs test files in a process of their own; how many tests passed and failed there. */
function run(files: string, env: Readonly<Record<string, string>>) {
  const report = join(scratch, 'report.json');
  rmSync(report, { force: true });
  const args = ['node_modules/vitest/vitest.mjs', 'run', files, '--reporter=json', `--outputFile=${report}`];
  const { status } = spawnSync(process.execPath, args, { cwd: root, env: { ...process.env, ...env }, stdio: 'ignore' });
  const counts = JSON.parse(readFileSync(report, 'utf8')) as Record<string, number>;
  return { good: status === 0, passed: counts.numPassedTests, failed: counts.numFailedTests };
}

/** Other figures than the cases that come with the program, worked by hand; two cases may share their first three signs. */
const CASES = [
  {
    id: 'T05a',
    inputs: { gross: [101, 102, 103, 107, 108], step: 5 },
    expected: { payable: [100, 100, 105, 105, 110], difference: [-1, -2, 2, -2, 2] },
  },
  { id: 'T05b', inputs: { gross: [125], step: 50 }, expected: { payable: [150], difference: [25] } },
  { id: 'T08', inputs: { pct_bp: 300, cap: 900, labour: [10_000, 40_000] }, expected: { supplies: [300, 900] } },
  // Reckoned and played as operations: two tests each.
  {
    id: 'T15',
    inputs: {
      gross: 100_000,
      applied: [
        { kind: 'deposit', amount: 25_000 },
        { kind: 'card', amount: 30_000 },
      ],
    },
    expected: { balances: [75_000, 45_000] },
  },
  {
    id: 'T45',
    inputs: {
      ...{ quote_net_without_core: 100_000, extra_net: 20_000, tax_bp: 1_000, deposit: 12_000 },
      ...{ part_costs: [30_000, 1_000, 1_000, 500, 100, 400, 2_000, 5_000], pay_cost: 8_000 },
      ...{ extra_min: 30, extra_pay_rate: 3_000 },
    },
    expected: {
      ...{ net: 120_000, tax: 12_000, gross: 132_000, balance: 120_000 },
      ...{ parts_cost: 40_000, labour_cost: 9_500, cost: 49_500, profit: 70_500, profit_pct_x10: 588 },
    },
  },
];

/** The first figure of what is expected, one unit off. */
const off = (value: unknown): unknown => {
  if (typeof value === 'number') return value + 1;
  if (Array.isArray(value)) return value.map((one, at) => (at === 0 ? off(one) : one));
  return Object.fromEntries(Object.entries(value as object).map(([key, one], at) => [key, at === 0 ? off(one) : one]));
};

const scenarios = (cases: readonly object[]) => {
  const file = join(scratch, 'cases.json');
  writeFileSync(file, JSON.stringify({ scenarios: cases.map((one) => ({ title: 'other figures', ...one })) }));
  return run('tests/trade/scenarios.test.ts', { SCENARIOS: file });
};

describe('a file of other scenarios', () => {
  const BOTH_WAYS = ['T15', 'T45'];
  // One test of the runner itself runs beside the cases.
  const all = CASES.length + BOTH_WAYS.length + 1;

  test('passes where its figures are right', () => {
    expect(scenarios(CASES)).toEqual({ good: true, passed: all, failed: 0 });
  });

  test('fails for each case that is wrong, names an input nobody reads, or expects what nobody answers', () => {
    const [first] = CASES;
    const wrong = CASES.map((one) => ({ ...one, expected: off(one.expected) }));
    const odd = [
      { ...first, inputs: { ...first?.inputs, coin: 5 } },
      { ...first, expected: { ...first?.expected, payed: [] } },
    ];
    const failed = wrong.length + BOTH_WAYS.length + odd.length;
    expect(scenarios([...CASES, ...wrong, ...odd])).toEqual({ good: false, passed: all, failed });
  });
});

describe('a folder of other published values', () => {
  const folder = join(scratch, 'checks');
  const checks = (text: (before: string) => string) => {
    mkdirSync(folder, { recursive: true });
    const name = '04c_rounding_money.json';
    cpSync(join(root, 'tests/outside/checks', name), join(folder, name));
    writeFileSync(join(folder, name), text(readFileSync(join(folder, name), 'utf8')));
    return run('tests/outside/rounding.test.ts', { CHECKS: folder });
  };

  test('is read: right values pass, a changed one fails', () => {
    const right = checks((text) => text);
    expect(right).toMatchObject({ good: true, failed: 0 });
    const changed = checks((text) => {
      const values = JSON.parse(text) as { allocationCases: { expect: number[] }[] };
      const [first] = values.allocationCases;
      if (first) first.expect = first.expect.map((share, at) => (at === 0 ? share + 1 : share));
      return JSON.stringify(values);
    });
    expect(changed).toEqual({ good: false, passed: (right.passed ?? 0) - 1, failed: 1 });
  });

  test('that holds none of them is refused, not passed over', () => {
    const empty = join(scratch, 'empty');
    mkdirSync(empty);
    expect(run('tests/outside/rounding.test.ts', { CHECKS: empty }).good).toBe(false);
  });
});
