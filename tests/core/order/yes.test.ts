import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Sheet } from '../../../core/money/line.ts';
import { money } from '../../../core/money/money.ts';
import { reckonSheet } from '../../../core/money/totals.ts';
import { type AllowanceRule, NO_ALLOWANCE } from '../../../core/order/allowance.ts';
import { type Answer, type DecisionFacts, yesAgainstSheet } from '../../../core/order/yes.ts';
import { anyRules, anySheet, job, line, plain, sheet } from '../money/sheets.ts';

/** Jobs of 100.00, 60.00 and 40.00 before 20 % tax: 120.00, 72.00 and 48.00 with it. */
const brakes = job('brakes', [line('fit', 'labour', 10_000)]);
const wipers = job('wipers', [line('blades', 'part', 6_000)]);
const lamp = job('lamp', [line('bulb', 'part', 4_000)]);
const all = sheet([brakes, wipers, lamp]);

const said = (ceiling: number | null, answers: Record<string, Answer>): DecisionFacts => ({
  ceiling: ceiling === null ? null : money(ceiling),
  jobs: Object.entries(answers).map(([jobId, answer]) => ({ jobId, answer })),
});
const against = (decisions: readonly DecisionFacts[], on: Sheet = all, rule: AllowanceRule = NO_ALLOWANCE) =>
  yesAgainstSheet(on, plain, decisions, rule);
const rule = (more: Partial<AllowanceRule>): AllowanceRule => ({ ...NO_ALLOWANCE, ...more });

describe('scope', () => {
  test('nothing said: every job is held and nothing is said yes to', () => {
    expect(against([])).toMatchObject({
      ceiling: 0,
      heldJobs: ['brakes', 'wipers', 'lamp'],
      heldSum: 24_000,
      onSheet: 24_000,
      coveredTotal: 0,
      coveredExcess: 0,
      inside: false,
    });
  });

  test('a yes names jobs: the others are held whatever the sum', () => {
    const result = against([said(1_000_000, { brakes: 'yes' })]);
    expect([...result.covered]).toEqual(['brakes']);
    expect(result).toMatchObject({ heldJobs: ['wipers', 'lamp'], heldSum: 12_000, coveredExcess: 0, inside: false });
  });

  test('a job of no worth is held too', () => {
    const on = sheet([brakes, job('look', [line('look', 'labour', 0)])]);
    expect(against([said(12_000, { brakes: 'yes' })], on)).toMatchObject({
      heldJobs: ['look'],
      heldSum: 0,
      inside: false,
    });
  });

  test('a warranty, goodwill or internal job at 0.00 is held until it is named', () => {
    const free = job('again', [line('fit again', 'labour', 10_000)], { given: true });
    const on = sheet([brakes, free]);
    expect(against([said(12_000, { brakes: 'yes' })], on)).toMatchObject({ heldJobs: ['again'], inside: false });
    expect(against([said(12_000, { brakes: 'yes', again: 'yes' })], on)).toMatchObject({
      onSheet: 12_000,
      inside: true,
    });
  });

  test('a later no or later takes a yes back, a later yes gives it again; the ceiling stands', () => {
    const yes = said(24_000, { brakes: 'yes', wipers: 'yes', lamp: 'yes' });
    expect(against([yes])).toMatchObject({ heldJobs: [], inside: true });
    const no = against([yes, said(null, { wipers: 'no' }), said(null, { lamp: 'later' })]);
    expect(no).toMatchObject({ heldJobs: ['wipers', 'lamp'], ceiling: 24_000, coveredTotal: 12_000 });
    expect(no.answers.get('lamp')).toBe('later');
    const again = [yes, said(null, { wipers: 'no' }), said(20_000, { wipers: 'yes' })];
    expect(against(again)).toMatchObject({ heldJobs: [], ceiling: 20_000, coveredExcess: 4_000 });
  });

  test('a yes to a job that is no longer on the sheet changes nothing', () => {
    expect(against([said(12_000, { brakes: 'yes', gone: 'yes' })], sheet([brakes]))).toMatchObject({
      coveredTotal: 12_000,
      heldJobs: [],
      inside: true,
    });
  });
});

describe('the ceiling', () => {
  const brakesOnly = sheet([brakes]);

  test('is the last one said, for all jobs said yes to so far, tax in', () => {
    const first = said(12_000, { brakes: 'yes' });
    // "Plus 72.00" is recorded as the old ceiling and 72.00 more.
    const plus = said(19_200, { wipers: 'yes' });
    expect(against([first, plus], sheet([brakes, wipers]))).toMatchObject({ ceiling: 19_200, inside: true });
    expect(against([first, said(15_000, { wipers: 'yes' })], sheet([brakes, wipers]))).toMatchObject({
      ceiling: 15_000,
      coveredExcess: 4_200,
      heldJobs: [],
      inside: false,
    });
  });

  test('exactly at it is inside, one minor unit over is not', () => {
    expect(against([said(12_000, { brakes: 'yes' })], brakesOnly)).toMatchObject({ coveredExcess: 0, inside: true });
    expect(against([said(11_999, { brakes: 'yes' })], brakesOnly)).toMatchObject({ coveredExcess: 1, inside: false });
  });

  test('a discount is reckoned anew for the covered jobs alone', () => {
    const discounts = [{ on: 'all' as const, reduction: { sum: money(5_000) }, words: 'a reason' }];
    const result = against([said(6_000, { brakes: 'yes' })], { ...all, discounts });
    expect(result).toMatchObject({ onSheet: 18_000, coveredTotal: 6_000, heldSum: 12_000, coveredExcess: 0 });
  });

  test('supplies are reckoned anew for the covered jobs alone', () => {
    const supplies = { mode: 'percent' as const, bp: 500, cap: money(800), floor: money(300) };
    const tune = job('tune', [line('tune', 'labour', 20_000)]);
    const on = sheet([lamp, tune, brakes]);
    const rules = { ...plain, supplies };
    const result = yesAgainstSheet(on, rules, [said(12_600, { brakes: 'yes' })], NO_ALLOWANCE);
    // 5 % of 100.00 is 5.00 for the covered job; the whole sheet stands at its cap of 8.00.
    expect(result).toMatchObject({ coveredTotal: 12_600, onSheet: (34_000 + 800) * 1.2, inside: false });
    expect(result.heldSum).toBe(result.onSheet - 12_600);
    const onlyLamp = yesAgainstSheet(on, rules, [said(4_800, { lamp: 'yes' })], NO_ALLOWANCE);
    expect(onlyLamp).toMatchObject({ coveredTotal: 4_800, coveredExcess: 0 });
  });
});

describe('the allowance is for drift of the same scope', () => {
  /** Covered for `ceiling`, costs `price` with 20 % tax. */
  const drifted = (price: number, ceiling: number, more: Partial<AllowanceRule>, added: Sheet['jobs'] = []) =>
    against(
      [said(ceiling, { it: 'yes' })],
      sheet([job('it', [line('it', 'part', price)]), ...added]),
      rule({ ...more }),
    );

  test('the figures of T10, as data', () => {
    // Scenario T10 (tests/trade/scenarios.json): yes to 2,000.00, now 2,137.28.
    const rules: readonly (readonly [Partial<AllowanceRule>, allowed: number, ask: boolean])[] = [
      [{ mode: 'none' }, 0, true],
      [{ mode: 'pct', bp: 1000 }, 20_000, false],
      [{ mode: 'lesser', bp: 1000, fixed: money(5_000) }, 5_000, true],
      [{ mode: 'greater', bp: 1000, fixed: money(1_000), cap: money(5_000) }, 5_000, true],
      [{ mode: 'lesser', bp: 1000, fixed: money(2_500) }, 2_500, true],
    ];
    const untaxed = { ...plain, taxes: {} };
    const on = sheet([job('it', [line('it', 'part', 213_728)])]);
    for (const [one, allowed, ask] of rules) {
      const result = yesAgainstSheet(on, untaxed, [said(200_000, { it: 'yes' })], rule(one));
      expect(result).toMatchObject({ allowed, coveredExcess: ask ? 13_728 : 0, inside: !ask });
    }
  });

  test('equal to the limit is inside, unless the rule says outside', () => {
    const ten = { mode: 'pct' as const, bp: 1000 };
    expect(drifted(11_000, 12_000, ten)).toMatchObject({ coveredTotal: 13_200, allowed: 1_200, inside: true });
    expect(drifted(11_001, 12_000, ten)).toMatchObject({ coveredTotal: 13_201, coveredExcess: 1_201, inside: false });
    expect(drifted(11_000, 12_000, { ...ten, edge: 'outside' })).toMatchObject({ coveredExcess: 1_200, inside: false });
    expect(drifted(10_999, 12_000, { ...ten, edge: 'outside' })).toMatchObject({ coveredTotal: 13_199, inside: true });
  });

  test('it never makes room for a job nobody named', () => {
    expect(drifted(10_000, 12_000, { mode: 'pct', bp: 10_000 }, [lamp])).toMatchObject({
      coveredExcess: 0,
      heldJobs: ['lamp'],
      inside: false,
    });
  });

  test('a rule before tax measures its sums before tax', () => {
    // 10.00 before tax is 12.00 with it.
    const fixed = { mode: 'lesser' as const, bp: 10_000, fixed: money(1_000) };
    expect(drifted(11_000, 12_000, { ...fixed, base: 'gross' })).toMatchObject({ allowed: 1_000, inside: false });
    expect(drifted(11_000, 12_000, { ...fixed, base: 'net' })).toMatchObject({ allowed: 1_200, inside: true });
    expect(drifted(11_001, 12_000, { ...fixed, base: 'net' })).toMatchObject({ coveredExcess: 1_201, inside: false });
    const capped = { mode: 'greater' as const, bp: 5_000, fixed: money(0), cap: money(500), base: 'net' as const };
    expect(drifted(11_000, 12_000, capped).allowed).toBe(600);
  });
});

const anyAllowance: fc.Arbitrary<AllowanceRule> = fc.record({
  mode: fc.constantFrom('none', 'pct', 'lesser', 'greater'),
  bp: fc.integer({ min: 0, max: 3_000 }),
  fixed: fc.integer({ min: 0, max: 20_000 }).map(money),
  cap: fc.option(fc.integer({ min: 0, max: 20_000 }).map(money)),
  edge: fc.constantFrom('inside', 'outside'),
  base: fc.constantFrom('gross', 'net'),
});
const answers = fc.constantFrom<Answer>('yes', 'no', 'later');

/** A sheet with answers to some of its jobs: by the jobs' places, since their ids are drawn with them. */
const anyTalk = fc
  .tuple(
    anySheet,
    anyRules,
    anyAllowance,
    fc.array(
      fc.record({
        ceiling: fc.option(fc.integer({ min: 0, max: 600_000 }).map(money)),
        jobs: fc.array(fc.tuple(fc.nat({ max: 4 }), answers), { maxLength: 4 }),
      }),
      { maxLength: 4 },
    ),
  )
  .map(([on, rules, drift, talk]) => ({
    on,
    rules,
    drift,
    decisions: talk.map(
      ({ ceiling, jobs }): DecisionFacts => ({
        ceiling,
        jobs: jobs.flatMap(([place, answer]) => {
          const jobId = on.jobs[place]?.id;
          return jobId === undefined ? [] : [{ jobId, answer }];
        }),
      }),
    ),
  }));

describe('any talk about any sheet', () => {
  test('a job that nobody named changes nothing of what is covered, and is held', () => {
    fc.assert(
      fc.property(anyTalk, anySheet, ({ on, rules, drift, decisions }, other) => {
        const before = yesAgainstSheet(on, rules, decisions, drift);
        const more = { ...on, jobs: [...on.jobs, ...other.jobs] };
        const after = yesAgainstSheet(more, rules, decisions, drift);
        expect(after.coveredExcess).toBe(before.coveredExcess);
        expect(after.coveredTotal).toBe(before.coveredTotal);
        expect(after.heldJobs).toEqual([...before.heldJobs, ...other.jobs.map(({ id }) => id)]);
        if (other.jobs.length > 0) expect(after.inside).toBe(false);
      }),
    );
  });

  test('covered and held are all jobs, and their sums are the sheet', () => {
    fc.assert(
      fc.property(anyTalk, ({ on, rules, drift, decisions }) => {
        const result = yesAgainstSheet(on, rules, decisions, drift);
        const ids = on.jobs.map(({ id }) => id);
        expect(ids.filter((id) => result.covered.has(id) !== result.heldJobs.includes(id))).toEqual(ids);
        expect(result.coveredTotal + result.heldSum).toBe(result.onSheet);
        expect(result.onSheet).toBe(reckonSheet(on, rules).gross);
        const mine = { ...on, jobs: on.jobs.filter(({ id }) => result.covered.has(id)) };
        expect(result.coveredTotal).toBe(reckonSheet(mine, rules).gross);
      }),
    );
  });

  test('a higher ceiling never makes more of an excess, and one of the whole sheet for all jobs leaves none', () => {
    fc.assert(
      fc.property(anyTalk, fc.nat({ max: 100_000 }), ({ on, rules, drift, decisions }, more) => {
        const before = yesAgainstSheet(on, rules, decisions, drift);
        const raised = [...decisions, { ceiling: money(before.ceiling + more), jobs: [] }];
        expect(yesAgainstSheet(on, rules, raised, drift).coveredExcess).toBeLessThanOrEqual(before.coveredExcess);
        const everything: DecisionFacts = {
          ceiling: money(Math.max(0, before.onSheet)),
          jobs: on.jobs.map(({ id }) => ({ jobId: id, answer: 'yes' })),
        };
        expect(yesAgainstSheet(on, rules, [...decisions, everything], drift).inside).toBe(true);
      }),
    );
  });

  test('a no to every job holds them all and leaves no excess', () => {
    fc.assert(
      fc.property(anyTalk, answers, ({ on, rules, drift, decisions }, answer) => {
        if (answer === 'yes') return;
        const last = { ceiling: null, jobs: on.jobs.map(({ id }) => ({ jobId: id, answer })) };
        const result = yesAgainstSheet(on, rules, [...decisions, last], drift);
        expect(result).toMatchObject({ coveredTotal: 0, coveredExcess: 0, heldJobs: on.jobs.map(({ id }) => id) });
      }),
    );
  });

  test('the order of jobs within one answer makes no difference', () => {
    fc.assert(
      fc.property(anyTalk, ({ on, rules, drift }) => {
        const named = on.jobs.map(({ id }, place) => ({
          jobId: id,
          answer: place % 2 ? ('no' as const) : ('yes' as const),
        }));
        const one = (jobs: typeof named) => yesAgainstSheet(on, rules, [{ ceiling: money(1_000), jobs }], drift);
        expect(one(named.toReversed()).heldJobs).toEqual(one(named).heldJobs);
        expect(one(named.toReversed()).coveredExcess).toBe(one(named).coveredExcess);
      }),
    );
  });
});
