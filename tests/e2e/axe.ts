import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect } from './shop-fixture.ts';

const LIGHTS = ['day', 'bay'] as const;

/** What axe finds on the page as it stands, by all the rules that it runs by itself: none is switched off. */
export async function axeFaults(page: Page, light: (typeof LIGHTS)[number]): Promise<string[]> {
  // Without motion nothing is looked at half way from one colour to another.
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await page.evaluate((to) => {
    document.documentElement.dataset.light = to;
  }, light);
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations.flatMap((one) => one.nodes.map((node) => `${one.id}: ${node.target.join(' ')}`));
}

/** Nothing is found in either light. The test goes on, so that one run names every fault. */
export async function expectAxeClean(page: Page, what: string): Promise<void> {
  for (const light of LIGHTS) expect.soft(await axeFaults(page, light), `${what}, ${light}`).toEqual([]);
}
