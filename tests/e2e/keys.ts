import type { Locator, Page } from '@playwright/test';
import { t } from '../../renderer/words/t.ts';
import { type Garage, PEOPLE, type PersonName } from './garage.ts';
import { expect } from './shop-fixture.ts';

/** Tab stops that anybody would still walk along. */
const MOST_STEPS = 80;

/** A keyboard and nothing else: every real key press is counted, and what has the focus is only looked at. */
export class Keys {
  readonly #page: Page;
  #count = 0;

  constructor(page: Page) {
    this.#page = page;
  }

  get count(): number {
    return this.#count;
  }

  /** Presses each of these once; a chord such as Alt+J is one keystroke. */
  async press(...keys: readonly string[]): Promise<void> {
    for (const key of keys) {
      await this.#page.keyboard.press(key);
      this.#count += 1;
    }
  }

  /** Types into whatever has the focus, a keystroke each sign. */
  async type(text: string): Promise<void> {
    await this.#page.keyboard.type(text);
    this.#count += [...text].length;
  }

  /** Types over what stands in the field in hand. */
  async over(text: string): Promise<void> {
    await this.press('Control+A');
    await this.type(text);
  }

  /** Goes on with Tab (or Shift+Tab, or an arrow) until this has the focus. */
  async to(target: Locator, key = 'Tab'): Promise<void> {
    await expect(target).toBeAttached();
    for (let steps = 0; steps < MOST_STEPS; steps += 1) {
      if (await hasFocus(target)) return;
      await this.press(key);
    }
    throw new Error(`${MOST_STEPS} times ${key} did not lead to ${target}`);
  }

  /** Goes to a group of choices and along it with the arrows until this one is chosen. */
  async choose(scope: Page | Locator, group: string, option: string | RegExp, key = 'Tab'): Promise<void> {
    const radios = scope.getByRole('group', { name: group, exact: true }).getByRole('radio');
    await expect(radios.first()).toBeAttached();
    for (let steps = 0; !(await anyHasFocus(radios)); steps += 1) {
      if (steps >= MOST_STEPS) throw new Error(`${MOST_STEPS} times ${key} did not lead to ${group}`);
      await this.press(key);
    }
    const wanted = scope.getByRole('group', { name: group, exact: true }).getByRole('radio', {
      name: option,
      ...(typeof option === 'string' ? { exact: true } : {}),
    });
    const many = await radios.count();
    for (let steps = 0; !(await wanted.isChecked()); steps += 1) {
      if (steps > many) throw new Error(`the arrows did not lead to ${option}`);
      // Where none is chosen yet, the first one is taken as it is.
      await this.press((await hasFocus(wanted)) ? 'Space' : 'ArrowRight');
    }
  }

  /** Opens the window at its address and says who is working. */
  async enter(garage: Garage, name: PersonName = 'Odile'): Promise<void> {
    await this.#page.goto(garage.door.host.newLink('window'));
    const names = this.#page.getByRole('group', { name: t('frame.enterWho') }).getByRole('radio');
    await expect(names.first()).toBeFocused();
    await this.choose(this.#page, t('frame.enterWho'), name);
    await this.to(this.#page.getByLabel(t('frame.enterCode')));
    await this.type(PEOPLE.find((one) => one.name === name)?.code ?? '');
    await this.press('Enter');
    await expect(this.#page.getByRole('heading', { level: 1, name: t('today.title') })).toBeVisible();
  }

  /** Says how many keystrokes it took, and holds them under the ceiling: what was measured once and 15 % more. */
  report(what: string, measured: number): void {
    console.log(`${what}: ${this.#count} keystrokes`);
    expect(this.#count).toBeLessThanOrEqual(Math.floor(measured * 1.15));
  }
}

function hasFocus(target: Locator): Promise<boolean> {
  return target.evaluate((node) => node === document.activeElement);
}

async function anyHasFocus(targets: Locator): Promise<boolean> {
  return targets.evaluateAll((nodes) => nodes.some((node) => node === document.activeElement));
}
