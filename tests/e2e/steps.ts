import type { Locator, Page } from '@playwright/test';
import { t } from '../../renderer/words/t.ts';
import { PEOPLE } from './garage.ts';
import type { Keys } from './keys.ts';
import { OIL_JOB } from './oil-job.ts';
import { expect } from './shop-fixture.ts';
import { choose } from './window.ts';

/** The steps of the oil job on the bench, as they are done with the mouse and with the keys: Nessa signs. */

const SECOND = PEOPLE[3];

/** The step in hand. */
function workOf(page: Page, n: number): Locator {
  return page.getByRole('region', { name: t('bench.stepInHand', { n }) });
}

/** Bolts that a step tightens. */
function boltsOf(n: number): number {
  const step = OIL_JOB.steps[n - 1];
  return step !== undefined && 'torque' in step ? step.torque.count : 0;
}

const signed = (n: number) => 'second' in (OIL_JOB.steps[n - 1] ?? {});
const bolt = (page: Page, n: number, at: number) =>
  workOf(page, n).getByRole('button', { name: t('bench.boltTight', { bolt: at }) });
const end = (page: Page, n: number) =>
  workOf(page, n).getByRole('button', { name: t(signed(n) ? 'bench.stepSigned' : 'bench.stepDone', { n }) });

async function expectDone(page: Page, n: number): Promise<void> {
  const { procedure } = { procedure: page.getByRole('region', { name: t('bench.procedure') }) };
  await expect(procedure.getByRole('checkbox', { name: `${n} ${OIL_JOB.steps[n - 1]?.do}` })).toBeChecked();
}

/** Does the next step: with its torque entries, and the second person's own code where somebody must sign. */
export async function tickStep(page: Page, n: number): Promise<void> {
  for (let at = 1; at <= boltsOf(n); at += 1) await bolt(page, n, at).click();
  if (signed(n)) await signs(page, n, SECOND.code);
  await end(page, n).click();
  await expectDone(page, n);
}

/** The step that is signed, with everything tight, and a code that is not the second person's. */
export async function signWrongly(page: Page, n: number): Promise<void> {
  for (let at = 1; at <= boltsOf(n); at += 1) await bolt(page, n, at).click();
  await signs(page, n, 'not hers');
  await end(page, n).click();
  await expect(workOf(page, n).getByRole('alert')).toBeVisible();
}

async function signs(page: Page, n: number, code: string): Promise<void> {
  await choose(workOf(page, n), t('bench.second'), SECOND.name);
  await workOf(page, n).getByLabel(t('bench.secondCode')).fill(code);
}

/** The same by keys alone. */
export async function tickStepByKeys(keys: Keys, page: Page, n: number): Promise<void> {
  for (let at = 1; at <= boltsOf(n); at += 1) {
    await keys.to(bolt(page, n, at));
    await keys.press('Enter');
  }
  if (signed(n)) {
    await keys.choose(workOf(page, n), t('bench.second'), SECOND.name);
    await keys.to(workOf(page, n).getByLabel(t('bench.secondCode')));
    await keys.type(SECOND.code);
  }
  await keys.to(end(page, n));
  await keys.press('Enter');
  await expectDone(page, n);
}
