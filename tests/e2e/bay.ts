import type { Locator, Page } from '@playwright/test';
import { hrefOf } from '../../renderer/frame/router.ts';
import { t } from '../../renderer/words/t.ts';
import { type Garage, PEOPLE, type PersonName } from './garage.ts';
import { expect } from './shop-fixture.ts';

/** What a mechanic does at the tablet beside the lift, by touch alone. */
export const TABLET = { viewport: { width: 820, height: 1180 }, hasTouch: true } as const;

/** Lets the tablet in by a link and says who works at it. */
export async function enterByTouch(page: Page, link: string, name: PersonName = 'Runa'): Promise<void> {
  await page.goto(link);
  await page
    .getByRole('group', { name: t('frame.enterWho') })
    .getByText(name, { exact: true })
    .tap();
  await page.getByLabel(t('frame.enterCode')).fill(PEOPLE.find((one) => one.name === name)?.code ?? '');
  await page.getByRole('button', { name: t('frame.enterGo') }).tap();
  await expect(page.getByRole('heading', { level: 1, name: t('today.title') })).toBeVisible();
}

/** Opens the bench of a job at its address. */
export async function toBay(page: Page, garage: Garage, orderId: string, ...side: string[]): Promise<void> {
  await page.goto(`${garage.door.host.address}/${hrefOf('orders', orderId, 'bay-A', ...side)}`);
  await expect(page.locator('.bay')).toBeVisible();
}

export const inHand = (page: Page, n: number): Locator =>
  page.getByRole('region', { name: t('bench.stepInHand', { n }) });

/** Presses a button by its words. */
export async function press(scope: Page | Locator, name: string): Promise<void> {
  await scope.getByRole('button', { name, exact: true }).tap();
}

/** Tightens this bolt, which must be the one in hand. */
export async function tighten(page: Page, bolt: number): Promise<void> {
  await press(page, t('bench.boltTight', { bolt }));
}

/** Everything in view that can be touched and is too small for a glove: under 44 either way. */
export function tooSmall(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const shown = (node: Element) => node.checkVisibility() && node.getBoundingClientRect().width > 2;
    // A choice or a tick is touched by its label; what is read aloud only is not touched at all.
    const nodes = [...document.querySelectorAll('button, a, summary, input, select, textarea, label.chip, label.tick')];
    return nodes
      .filter((node) => shown(node) && node.closest('.aloud') === null && !node.classList.contains('aloud'))
      .filter((node) => node.closest('label.tick, label.chip') === null || node.matches('label'))
      .map((node) => ({ node, box: node.getBoundingClientRect() }))
      .filter(({ box }) => box.width < 44 || box.height < 44)
      .map(({ node, box }) => {
        const size = `${Math.round(box.width)}x${Math.round(box.height)}`;
        return `${size} ${node.getAttribute('aria-label') ?? node.textContent?.trim() ?? node.tagName}`;
      });
  });
}
