import type { Page } from '@playwright/test';
import { t } from '../../renderer/words/t.ts';
import { Keys } from './keys.ts';
import { expect } from './shop-fixture.ts';
import { field } from './window.ts';

/**
 * From an empty folder to an empty Today by keys alone: the garage's name, an hour of work, one tax on two kinds, one
 * person. The window is open already. Returns the keyboard with its count.
 */
export async function openTheGarage(page: Page): Promise<Keys> {
  const keys = new Keys(page);
  await expect(page.getByRole('heading', { level: 1, name: t('start.title') })).toBeVisible();
  await keys.to(field(page, t('start.name')));
  await keys.type('Saltmarsh');
  await keys.to(field(page, t('start.hour')));
  await keys.type('96');
  await keys.to(field(page, t('start.taxName')));
  await keys.type('Tax');
  await keys.to(field(page, t('start.taxRate')));
  await keys.type('6.25');
  for (const kind of [t('start.part'), t('start.fluid')]) {
    await keys.to(
      page.getByRole('group', { name: t('start.taxKinds') }).getByRole('checkbox', { name: kind, exact: true }),
    );
    await keys.press('Space');
  }
  await keys.to(field(page, t('start.person')));
  await keys.type('Odile');
  await keys.to(page.getByLabel(t('start.code'), { exact: true }));
  await keys.type('odile-1');
  await keys.press('Control+Enter');
  await expect(page.getByRole('heading', { level: 1, name: t('frame.enterTitle') })).toBeVisible();
  await expect(page.getByLabel(t('frame.enterCode'))).toBeFocused();
  await keys.type('odile-1');
  await keys.press('Enter');
  await expect(page.getByRole('main')).toContainText(t('today.empty'));
  return keys;
}
