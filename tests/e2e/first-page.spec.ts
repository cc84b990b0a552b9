import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { PEOPLE } from '../../demo-shop/garage.ts';
import { backUp } from '../../electron/copies.ts';
import { type OpenDoor, openWithDoor } from '../../electron/open.ts';
import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import { expect, test } from './shop-fixture.ts';
import { field } from './window.ts';

const root = process.env.CROWNWHEEL_WINDOW;

/** An empty folder with its door, and a place beside it where the demo garage may stand. */
async function withFolder(work: (door: OpenDoor, folder: string) => Promise<void>): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'crownwheel-first-'));
  const places = { folder: join(folder, 'shop'), demo: join(folder, 'demo') };
  const door = await openWithDoor({ ...places, port: 0, ...(root === undefined ? {} : { root }) });
  try {
    await work(door, folder);
  } finally {
    await door.close();
    rmSync(folder, { recursive: true });
  }
}

const enterAs = async (page: Page, name: string, code: string) => {
  await page.locator('label').filter({ hasText: name }).click();
  await page.getByLabel(t('frame.enterCode')).fill(code);
  await page.getByLabel(t('frame.enterCode')).press('Enter');
};

test('the demo garage is stopped, made after all, opened, and says who may enter with which code', async ({ page }) => {
  test.setTimeout(300_000);
  await withFolder(async (door, folder) => {
    await page.goto(door.host.newLink('window'));
    const demo = page.getByRole('region', { name: t('start.demo') });
    await demo.getByRole('button', { name: t('start.demoGo') }).click();
    await expect(demo.getByRole('status')).toContainText(/^\d+ of \d+ scenes/, { timeout: 60_000 });
    await demo.getByRole('button', { name: t('start.demoStop') }).click();
    await expect(demo.getByRole('status')).toHaveText(t('start.demoStopped'));
    expect(existsSync(join(folder, 'demo'))).toBe(false);

    await demo.getByRole('button', { name: t('start.demoGo') }).click();
    await expect(demo.getByRole('progressbar')).toBeVisible();
    await expect(page.getByRole('heading', { name: t('start.demoCodes') })).toBeVisible({ timeout: 240_000 });
    for (const { name, role, code } of PEOPLE)
      await expect(page.getByText(t('start.demoPerson', { name, role: t(`start.${role}`), code }))).toBeVisible();
    await expectAxeClean(page, 'the demo’s codes');
    await enterAs(page, PEOPLE[1].name, PEOPLE[1].code);
    await expect(page.getByText(t('frame.practice'))).toBeVisible();
    await expect(page.getByRole('main')).toContainText('FJL 306');
    expect(existsSync(join(folder, 'demo', 'shop.sqlite'))).toBe(true);
  });
});

test('a copy is pointed at, looked into and brought back with the last number on paper', async ({ garage, page }) => {
  await withFolder(async (door, folder) => {
    const copy = (await backUp(garage.shop.folder, join(folder, 'stick'))).path;
    await page.goto(door.host.newLink('window'));
    const back = page.getByRole('region', { name: t('start.copy') });
    await back.getByRole('button', { name: t('start.copyOpen') }).click();
    await field(page, t('start.copyPlace')).fill(join(folder, 'nowhere'));
    await back.getByRole('button', { name: t('start.copyLook') }).click();
    await expect(back.getByRole('alert')).toContainText('is not where it should be');
    await expectAxeClean(page, 'a copy that is not there');
    await field(page, t('start.copyPlace')).fill(copy);
    await field(page, t('start.copyPlace')).press('Enter');
    await expect(back.getByRole('status')).toContainText('Saltmarsh Motor Works');
    await expect(back.getByRole('status')).toContainText(t('start.copySound'));
    await field(page, t('start.copyLast')).fill('one');
    await expect(back.getByText(t('start.copyLastWrong'))).toBeVisible();
    await field(page, t('start.copyLast')).fill('1060');
    await back.getByRole('button', { name: t('start.copyGo') }).click();
    await expect(page.getByRole('status')).toContainText('the next is 1061');
    await enterAs(page, 'Odile', 'odile-1234');
    await expect(page.getByRole('main')).toContainText(t('today.empty'));
    const answer = await door.standing.call('shop.get', {}, { personId: garage.personId('Odile'), device: 'test' });
    expect(answer).toMatchObject({ ok: true, output: { nextNumbers: { invoice: 1061 } } });
  });
});
