import type { Locator, Page } from '@playwright/test';
import type { Combo } from '../../renderer/frame/key-map.ts';
import { hrefOf, type PlaceName } from '../../renderer/frame/router.ts';
import type { Garage } from './garage.ts';
import { expect } from './shop-fixture.ts';
import { opensPaper } from './window.ts';

/** As the browser is told what is pressed. */
const pressed = (combo: Combo): string =>
  combo
    .replace('Ctrl', 'Control')
    .replace('Space', ' ')
    .replace('Esc', 'Escape')
    .replace(/[A-Z]$/, (letter) => letter.toLowerCase());

/** Where a key of the map is tried: the window, the shop behind it, and which keys were pressed. */
export class KeyStage {
  readonly page: Page;
  readonly garage: Garage;
  readonly pressed = new Set<Combo>();

  constructor(page: Page, garage: Garage) {
    this.page = page;
    this.garage = garage;
  }

  async press(...combos: readonly Combo[]): Promise<void> {
    for (const combo of combos) {
      await this.page.keyboard.press(pressed(combo));
      this.pressed.add(combo);
    }
  }

  /** Goes to a place by its address, with nothing in hand. */
  async at(place: PlaceName, ...path: readonly string[]): Promise<void> {
    await this.page.goto(`${this.garage.door.host.address}/${hrefOf(place, ...path)}`);
    await expect(this.page.locator('main h1, main h2').first()).toBeVisible();
  }

  /** The key moves the focus onto this. */
  async leadsTo(combo: Combo, target: Locator): Promise<void> {
    await expect(target).toBeVisible();
    await this.opensOnto(combo, target);
  }

  /** The same onto what the key itself brings. */
  async opensOnto(combo: Combo, target: Locator): Promise<void> {
    await this.press(combo);
    await expect(target).toBeFocused();
  }

  /** The key opens a paper in a window of its own. */
  async opensPaper(combo: Combo): Promise<void> {
    await opensPaper(this.page, () => this.press(combo));
  }
}
