import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import type { OutputOf } from '../../core/contract/index.ts';
import type { OpenDoor } from '../../electron/open.ts';
import { SETTINGS } from '../db/practice-shop.ts';
import { expect, test } from './shop-fixture.ts';

const CODE = 'desk-1234';

/** A garage that is set up, with one order on which a job waits for its yes; returns the order's id. */
async function garage(shop: OpenDoor): Promise<string> {
  const call = async (personId: string | null, operation: string, input: unknown) => {
    const answer = await shop.shop.call(operation, input, { personId, device: 'test' });
    if (!answer.ok) throw new Error(JSON.stringify(answer.error));
    return answer.output;
  };
  const setUp = (await call(null, 'shop.setUp', {
    settings: SETTINGS,
    people: [{ name: 'Odile', role: 'owner', code: CODE }],
    bays: [{ name: 'Bay 1', words: 'lift' }],
    rates: [{ name: 'Labour', price: 9600, usual: true }],
  })) as OutputOf<'shop.setUp'>;
  const owner = setUp.people[0]?.id ?? '';
  const order = (await call(owner, 'order.book', {
    customer: { add: { name: 'Ilse Vandermeer', phone: '555-0142' } },
    car: { add: { plate: 'KTB 4471', words: 'Corvane R', unit: 'km' } },
    complaint: 'It whines.',
    mileage: 42_180,
    here: true,
  })) as OutputOf<'order.book'>;
  await call(owner, 'job.add', {
    orderId: order.id,
    job: { title: 'Find the whine' },
    lines: [{ kind: 'labour', words: 'Road test', quantity: 1000, unit: 'h', unitPrice: 9600 }],
  });
  return order.id;
}

async function enter(shop: OpenDoor, page: Page): Promise<void> {
  await page.goto(shop.host.newLink('window'));
  await page.locator('input[type=password]').fill(CODE);
  await page.getByText('Odile').first().click();
  await page.locator('input[type=password]').press('Enter');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(/Today/);
}

test('axe finds nothing in any place, in both lights', async ({ shop, page }) => {
  test.setTimeout(120_000);
  const id = await garage(shop);
  await enter(shop, page);
  for (const light of ['day', 'bay']) {
    await page.evaluate((to) => {
      document.documentElement.dataset.light = to;
    }, light);
    for (const place of [
      'today',
      'orders',
      'cars',
      'customers',
      'stock',
      'job-book',
      'money',
      'shop',
      `orders/${id}`,
    ]) {
      await page.evaluate((to) => {
        location.hash = `#/${to}`;
      }, place);
      await page.waitForTimeout(500);
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(
        violations.map(
          (one) => `${place} ${light}: ${one.id} ${one.nodes.map((node) => node.target.join(' ')).join(', ')}`,
        ),
      ).toEqual([]);
    }
  }
});

test('the order stands on Today with its next move, and opens as its sheet', async ({ shop, page }) => {
  await garage(shop);
  await enter(shop, page);
  await expect(page.getByRole('main')).toContainText('KTB 4471');
  await page.getByRole('main').getByText('KTB 4471').first().click();
  await expect(page.getByRole('textbox', { name: /job A/i })).toHaveValue('Find the whine');
  // 96.00 labour + 4.80 supplies (5 %) + 20.16 tax (20 %)
  await expect(page.locator('body')).toContainText('120.96');
});
