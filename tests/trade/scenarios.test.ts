import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { booksCases } from './books-cases.ts';
import { carCases } from './car-cases.ts';
import type { Case } from './case.ts';
import { MUST_BE_PLAYED, played } from './played.ts';
import { sheetCases } from './sheet-cases.ts';
import { stockCases } from './stock-cases.ts';
import { timeCases } from './time-cases.ts';
import { torqueCases } from './torque-cases.ts';
import { yesCases } from './yes-cases.ts';

const chosen = process.env.SCENARIOS;
const file = chosen === undefined ? new URL('scenarios.json', import.meta.url) : resolve(chosen);

const { scenarios } = z
  .object({
    scenarios: z
      .array(
        z.object({
          id: z.string().min(3),
          title: z.string(),
          inputs: z.unknown(),
          expected: z.record(z.string(), z.unknown()),
        }),
      )
      .min(1),
  })
  .parse(JSON.parse(readFileSync(file, 'utf8')));

const reckoned: Readonly<Record<string, Case>> = {
  ...sheetCases,
  ...yesCases,
  ...timeCases,
  ...carCases,
  ...stockCases,
  ...booksCases,
  ...torqueCases,
};

/** Every key of `expected` must be among the answers, and equal; lists must be equal as a whole. */
async function holds(work: Case, inputs: unknown, expected: Readonly<Record<string, unknown>>): Promise<void> {
  expect(Object.keys(expected).length).toBeGreaterThan(0);
  expect(await work(inputs)).toMatchObject(expected);
}

describe('scenarios, reckoned', () => {
  for (const { id, title, inputs, expected } of scenarios) {
    const name = id.slice(0, 3);
    const work = reckoned[name];
    if (work === undefined && (played[name] !== undefined || MUST_BE_PLAYED.includes(name))) continue;
    test(`${id} ${title}`, async ({ skip }) => {
      if (work === undefined) return skip(`no adapter for ${name}: the program has no function for it yet`);
      await holds(work, inputs, expected);
    });
  }
});

describe('scenarios, played as operations', () => {
  for (const { id, title, inputs, expected } of scenarios) {
    const name = id.slice(0, 3);
    const work = played[name];
    if (work === undefined && !MUST_BE_PLAYED.includes(name)) continue;
    test(`${id} ${title}`, async ({ skip }) => {
      if (work === undefined) return skip(`${name} is not played as operations yet`);
      await holds(work, inputs, expected);
    });
  }
});

test('a key of expected that no adapter answers fails', async () => {
  await expect(holds(() => ({ net: 1 }), {}, { net: 1, tax: 0 })).rejects.toThrow();
  await expect(holds(() => ({ by_day: { a: 1 } }), {}, { by_day: { a: 1, b: 2 } })).rejects.toThrow();
});
