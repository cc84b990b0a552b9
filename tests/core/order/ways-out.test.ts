import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { MoneyRules, Sheet } from '../../../core/money/line.ts';
import { money } from '../../../core/money/money.ts';
import { reckonSheet } from '../../../core/money/totals.ts';
import { NO_ALLOWANCE } from '../../../core/order/allowance.ts';
import { type WayOut, waysOut } from '../../../core/order/ways-out.ts';
import { type DecisionFacts, yesAgainstSheet } from '../../../core/order/yes.ts';

const RULES: MoneyRules = {
  prices: 'exclusive',
  taxRounding: 'document',
  taxes: { labour: [{ id: 't', name: 'Tax', ratePpm: 88_750 }], part: [{ id: 't', name: 'Tax', ratePpm: 88_750 }] },
  supplies: { mode: 'percent', bp: 500, cap: money(2500), floor: null },
};

const line = fc.record({
  kind: fc.constantFrom('labour' as const, 'part' as const),
  quantity: fc.integer({ min: 0, max: 5000 }),
  unitPrice: fc.integer({ min: 0, max: 20_000 }).map(money),
  given: fc.boolean(),
});
const job = fc.record({
  lines: fc.array(line, { maxLength: 4 }),
  given: fc.boolean(),
  fixedPrice: fc.option(fc.integer({ min: 1, max: 50_000 }).map(money), { nil: undefined }),
  covered: fc.boolean(),
});

/** A sheet with a discount over it, and one yes to some of its jobs up to a ceiling. */
const order = fc.record({
  jobs: fc.array(job, { minLength: 1, maxLength: 4 }),
  bp: fc.integer({ min: 0, max: 3000 }),
  ceiling: fc.integer({ min: 0, max: 100_000 }).map(money),
});

type Order = typeof order extends fc.Arbitrary<infer O> ? O : never;

function placed({ jobs, bp, ceiling }: Order) {
  const sheet: Sheet = {
    jobs: jobs.map(({ lines, given, fixedPrice }, at) => ({
      id: `${at}`,
      given,
      fixedPrice,
      lines: lines.map((one, place) => ({ ...one, id: `${at}.${place}` })),
    })),
    discounts: [{ on: 'all', reduction: { bp }, words: '' }],
    exempt: false,
  };
  const named = jobs.flatMap(({ covered }, at) => (covered ? [{ jobId: `${at}`, answer: 'yes' as const }] : []));
  const decisions: DecisionFacts[] = named.length === 0 ? [] : [{ ceiling, jobs: named }];
  return { sheet, decisions };
}

function taken(sheet: Sheet, way: WayOut): Sheet {
  const jobs = sheet.jobs.flatMap((one) => {
    if (one.id !== way.jobId) return [one];
    if (way.kind === 'move') return [];
    if (way.lineId === null) return [{ ...one, given: true }];
    return [{ ...one, lines: one.lines.map((each) => (each.id === way.lineId ? { ...each, given: true } : each)) }];
  });
  return { ...sheet, jobs };
}

describe('the ways out of what lies beyond a yes', () => {
  test('none inside; outside always one for all of it, and every figure comes true', () => {
    fc.assert(
      fc.property(order, (given) => {
        const { sheet, decisions } = placed(given);
        const now = yesAgainstSheet(sheet, RULES, decisions, NO_ALLOWANCE);
        const ways = waysOut(sheet, RULES, decisions, NO_ALLOWANCE);
        expect(ways.length > 0).toBe(!now.inside);
        for (const way of ways) {
          if (way.kind === 'yes') {
            const wanted = way.mends === 'job' ? [way.jobId ?? ''] : way.mends === 'all' ? now.heldJobs : [];
            const said = { ceiling: way.after, jobs: wanted.map((jobId) => ({ jobId, answer: 'yes' as const })) };
            const then = yesAgainstSheet(sheet, RULES, [...decisions, said], NO_ALLOWANCE);
            expect(way.after - way.amount).toBe(now.ceiling);
            expect(then.coveredExcess).toBe(0);
            expect(wanted.every((jobId) => then.covered.has(jobId))).toBe(true);
            if (way.mends === 'all') expect(then.inside).toBe(true);
            continue;
          }
          const changed = taken(sheet, way);
          expect(reckonSheet(changed, RULES).gross).toBe(way.after);
          expect(now.onSheet - way.after).toBe(way.amount);
          const then = yesAgainstSheet(changed, RULES, decisions, NO_ALLOWANCE);
          if (way.mends === 'excess') expect(then.coveredExcess === 0).toBe(way.enough);
          else if (way.kind === 'move') expect(then.heldJobs).not.toContain(way.jobId);
          else expect(way.wants).toBe('owner-yes');
        }
      }),
    );
  });

  test('a single job without a yes asks for the whole sheet, once', () => {
    const sheet: Sheet = {
      jobs: [
        {
          id: 'A',
          given: false,
          lines: [{ id: 'a', kind: 'part', quantity: 1000, unitPrice: money(1000), given: false }],
        },
        {
          id: 'B',
          given: false,
          lines: [{ id: 'b', kind: 'part', quantity: 1000, unitPrice: money(2000), given: false }],
        },
      ],
      discounts: [],
      exempt: true,
    };
    const said: DecisionFacts = { ceiling: money(1000), jobs: [{ jobId: 'A', answer: 'yes' }] };
    const ways = waysOut(sheet, RULES, [said], NO_ALLOWANCE);
    expect(ways.map(({ kind, mends, jobId, amount, after }) => [kind, mends, jobId, amount, after])).toEqual([
      ['yes', 'job', 'B', 2000, 3000],
      ['give', 'job', 'B', 2000, 1000],
      ['move', 'job', 'B', 2000, 1000],
    ]);
  });
});
