import { hrefOf, PLACES, type PlaceName } from '../../renderer/frame/router.ts';
import { t } from '../../renderer/words/t.ts';
import { axeFaults, expectAxeClean } from './axe.ts';
import { expect, test } from './shop-fixture.ts';
import { SWAP_TITLE } from './swap.ts';
import { choose, enter, field } from './window.ts';

test('axe finds nothing at the first start, filled in wrongly or not', async ({ shop, page }) => {
  await page.goto(shop.host.newLink('window'));
  await expect(page.getByRole('heading', { level: 1, name: t('start.title') })).toBeVisible();
  await expectAxeClean(page, 'first start');
  await field(page, t('start.hour')).fill('a lot');
  await page.getByRole('button', { name: t('start.go') }).click();
  await expect(page.getByText(t('start.nameNeeded')).first()).toBeVisible();
  await expectAxeClean(page, 'first start with errors');
});

test('axe finds nothing where one says who is working', async ({ garage, page }) => {
  await page.goto(garage.door.host.newLink('window'));
  // Of several people nobody is proposed.
  await page.getByLabel(t('frame.enterCode')).fill('not the code');
  await page.getByLabel(t('frame.enterCode')).press('Enter');
  await expect(page.getByRole('alert')).toHaveText(t('frame.enterNobody'));
  await choose(page, t('frame.enterWho'), 'Odile');
  await page.getByLabel(t('frame.enterCode')).press('Enter');
  await expect(page.getByRole('alert')).toHaveText(t('frame.enterWrong', { person: 'Odile' }));
  await expectAxeClean(page, 'a wrong code');
});

test('axe finds nothing in any place, empty or not', async ({ garage, page }) => {
  await enter(page, garage);
  await expectAxeClean(page, 'an empty Today');
  const id = await garage.booked();
  await garage.job(id);
  const { customer, car } = await garage.order(id);
  /** Words by which a place is known to be drawn whole. */
  const drawn: Partial<Record<PlaceName, string>> = {
    ...{ today: 'KTB 4471', orders: 'KTB 4471', cars: 'KTB 4471', customers: 'Ilse Vandermeer' },
    'job-book': SWAP_TITLE,
  };
  const pages: readonly [PlaceName, ...string[]][] = [
    ...PLACES.map((place): [PlaceName] => [place]),
    ['cars', car.id],
    ['customers', customer.id],
  ];
  for (const [place, ...path] of pages) {
    await page.evaluate(
      (to) => {
        location.hash = to;
      },
      hrefOf(place, ...path),
    );
    const main = page.getByRole('main', { name: t(`frame.${place}`), exact: true });
    await expect(main.getByRole('heading', { level: 1 })).toBeVisible();
    await expect(main).toContainText(drawn[place] ?? '');
    await expectAxeClean(page, hrefOf(place, ...path));
  }
});

test('axe finds nothing in what opens over a page: found lines, the keys, the places of a tablet', async ({
  garage,
  page,
}) => {
  await garage.booked();
  await enter(page, garage);
  await page.getByRole('combobox', { name: t('frame.find') }).fill('ktb');
  await expect(page.getByRole('option').first()).toBeVisible();
  await expectAxeClean(page, 'found');
  await page.getByRole('combobox', { name: t('frame.find') }).fill('nobody at all');
  await expect(page.getByText(t('frame.findNone', { text: 'nobody at all' }))).toBeVisible();
  await expectAxeClean(page, 'nothing found');
  await page.keyboard.press('Escape');
  await page.keyboard.press('Escape');
  await page.keyboard.press('?');
  await expect(page.getByRole('dialog', { name: t('keys.title') })).toBeVisible();
  await expectAxeClean(page, 'the keys');
  await page.keyboard.press('Escape');
  await page.setViewportSize({ width: 820, height: 1180 });
  await page.getByRole('button', { name: t('frame.showPlaces') }).click();
  await expectAxeClean(page, 'the places of a tablet');
});

test('axe finds nothing while a car is booked in', async ({ garage, page }) => {
  await garage.booked();
  await enter(page, garage);
  await page.getByRole('button', { name: t('today.book') }).click();
  await expectAxeClean(page, 'book in');
  await page.getByRole('button', { name: t('intake.go') }).click();
  await expect(page.getByText(t('intake.nameNeeded'))).toBeVisible();
  await expectAxeClean(page, 'book in with errors');
  await field(page, t('intake.phone')).fill('555-0142');
  const known = page.getByRole('group', { name: t('intake.known') }).getByRole('button', { name: /Vandermeer/ });
  await expect(known).toBeVisible();
  await expectAxeClean(page, 'book in, somebody known');
  await known.click();
  await field(page, t('intake.mileage', { unit: t('intake.km') })).fill('12,000');
  await expect(page.getByRole('group', { name: t('intake.doubt') })).toBeVisible();
  await expectAxeClean(page, 'book in, less than last time');
});

test('axe does find a field without a name and words too pale for either light', async ({ garage, page }) => {
  await enter(page, garage);
  await page.evaluate(() => {
    const main = document.querySelector('main');
    main?.append(Object.assign(document.createElement('input'), { id: 'nameless' }));
    const pale = Object.assign(document.createElement('p'), { id: 'pale', textContent: 'Pale words' });
    pale.style.cssText = 'color: var(--paper); background: var(--paper-2)';
    main?.append(pale);
  });
  for (const light of ['day', 'bay'] as const)
    expect(await axeFaults(page, light)).toEqual(expect.arrayContaining(['label: #nameless', 'color-contrast: #pale']));
});
