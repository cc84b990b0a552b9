import type { Locator, Page } from '@playwright/test';
import { t } from '../../renderer/words/t.ts';
import { PEOPLE } from './garage.ts';
import type { Keys } from './keys.ts';
import { OIL_JOB } from './oil-job.ts';
import { expect } from './shop-fixture.ts';

/** The steps of the oil job on the bench, as they are ticked with the mouse and with the keys: Nessa signs. */

const SECOND = PEOPLE[3];

function rowOf(page: Page, n: number): Locator {
  return page
    .getByRole('region', { name: t('bench.procedure') })
    .getByRole('listitem')
    .nth(n - 1);
}

/** Bolts that a step tightens. */
function boltsOf(n: number): number {
  const step = OIL_JOB.steps[n - 1];
  return step !== undefined && 'torque' in step ? step.torque.count : 0;
}

const signed = (n: number) => 'second' in (OIL_JOB.steps[n - 1] ?? {});

/** Ticks the next step: with its torque entries, and the second person's own code where somebody must sign. */
export async function tickStep(page: Page, n: number): Promise<void> {
  const row = rowOf(page, n);
  for (let bolt = 1; bolt <= boltsOf(n); bolt += 1) await tighten(page, n, bolt);
  if (signed(n)) await signs(page, n, SECOND.code);
  await row.getByRole('checkbox').click();
  await expect(row.getByRole('checkbox')).toBeChecked();
}

/** The step that is signed, with everything tight, and a code that is not the second person's. */
export async function signWrongly(page: Page, n: number): Promise<void> {
  for (let bolt = 1; bolt <= boltsOf(n); bolt += 1) await tighten(page, n, bolt);
  await signs(page, n, 'not hers');
  await rowOf(page, n).getByRole('checkbox').click();
  await expect(rowOf(page, n).getByRole('alert')).toBeVisible();
  await rowOf(page, n)
    .getByRole('button', { name: t('bench.otherwise') })
    .click();
}

async function tighten(page: Page, n: number, bolt: number): Promise<void> {
  await rowOf(page, n)
    .getByRole('button', { name: t('bench.tightened') })
    .click();
  await expect(rowOf(page, n)).toContainText(t('bench.entered', { done: bolt, n: boltsOf(n) }));
}

async function signs(page: Page, n: number, code: string): Promise<void> {
  await rowOf(page, n)
    .getByRole('combobox', { name: t('bench.second') })
    .selectOption(SECOND.name);
  await rowOf(page, n).getByLabel(t('bench.secondCode')).fill(code);
}

/** The same by keys alone. */
export async function tickStepByKeys(keys: Keys, page: Page, n: number): Promise<void> {
  const row = rowOf(page, n);
  if (boltsOf(n) > 0) await keys.to(row.getByRole('button', { name: t('bench.tightened') }));
  for (let bolt = 1; bolt <= boltsOf(n); bolt += 1) {
    await keys.press('Enter');
    await expect(row).toContainText(t('bench.entered', { done: bolt, n: boltsOf(n) }));
  }
  if (signed(n)) {
    await keys.to(row.getByRole('combobox', { name: t('bench.second') }));
    await keys.type(SECOND.name.slice(0, 2));
    await keys.to(row.getByLabel(t('bench.secondCode')));
    await keys.type(SECOND.code);
  }
  await keys.to(row.getByRole('checkbox'), signed(n) ? 'Shift+Tab' : 'Tab');
  await keys.press('Space');
  await expect(row.getByRole('checkbox')).toBeChecked();
}
