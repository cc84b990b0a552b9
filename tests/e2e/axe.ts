import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect } from './shop-fixture.ts';

const LIGHTS = ['day', 'bay'] as const;

/** What axe leaves behind in a page where it ran once, as far as it is used here. */
interface AxeInPage {
  run(): Promise<{ violations: { id: string; nodes: { target: unknown[] }[] }[] }>;
}

/** What axe finds on the page as it stands, by all the rules that it runs by itself: none is switched off. */
export async function axeFaults(page: Page, light: (typeof LIGHTS)[number]): Promise<string[]> {
  // Without motion nothing is looked at half way from one colour to another.
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await page.evaluate((to) => {
    document.documentElement.dataset.light = to;
  }, light);
  // Bringing axe into a page takes ten times as long as running it, and there is one frame only.
  if (!(await page.evaluate(() => 'axe' in window))) await new AxeBuilder({ page }).setLegacyMode(true).analyze();
  const { violations } = await page.evaluate(() => (window as unknown as { axe: AxeInPage }).axe.run());
  return violations.flatMap((one) => one.nodes.map((node) => `${one.id}: ${node.target.join(' ')}`));
}

/** Nothing is found in either light. The test goes on, so that one run names every fault. */
export async function expectAxeClean(page: Page, what: string): Promise<void> {
  for (const light of LIGHTS) expect.soft(await axeFaults(page, light), `${what}, ${light}`).toEqual([]);
}
