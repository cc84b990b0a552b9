import type { Page } from '@playwright/test';
import { hrefOf } from '../../renderer/frame/router.ts';
import { t } from '../../renderer/words/t.ts';
import { expect, test } from './shop-fixture.ts';
import { enter } from './window.ts';

/**
 * What the trade wants a garage to be able to set, word for word from its list: each with the page of Shop and the labels
 * that it stands under. `null`: it has no place in Shop yet, and nothing here says that it does.
 */
const TRADE: Readonly<Record<string, readonly [page: string, ...labels: string[]] | null>> = {
  // Money.
  'minor units': ['tax', t('start.currency')],
  'tax rates': ['tax', t('start.taxRate'), t('start.source'), t('start.checkedOn')],
  'which kinds of line': ['tax', t('start.taxKinds')],
  'inclusive/exclusive': ['tax', t('start.prices')],
  'tax rounding by line or document': ['tax', t('shop.taxRounding')],
  'cash step': ['tax', t('shop.cashStep')],
  'core-tax way': ['fees', t('rules.core'), t('rules.coreShare'), t('terms.source'), t('terms.checkedOn')],
  'number series': [
    'numbers',
    ...(['order', 'quote', 'invoice', 'creditNote', 'receipt'] as const).map((series) => t(`shop.series-${series}`)),
  ],
  // Authorisation.
  mode: ['yes', t('start.overrun'), t('terms.source'), t('terms.checkedOn')],
  percent: ['yes', t('start.overPercent')],
  sum: ['yes', t('start.overSum')],
  cap: ['yes', t('shop.overCap')],
  'base before/after tax': ['yes', t('shop.overBase'), t('shop.overEdge')],
  'written-estimate threshold': ['yes', t('own.estimateAbove')],
  'customer maximum': ['yes', t('own.ownMost')],
  'estimate validity days': ['numbers', t('shop.quoteDays')],
  // Fees.
  'supplies %, base, cap, printed sentence': [
    'tax',
    ...(['supplies', 'shareOf', 'suppliesBase', 'floor', 'cap', 'suppliesSentence'] as const).map((key) =>
      t(`shop.${key}`),
    ),
  ],
  'waste fee': ['fees', t('rules.waste'), t('rules.wasteAmount'), t('rules.wasteCalled'), t('rules.wasteWhen')],
  'storage free days and rate': ['reminding', t('own.storagePerDay'), t('own.storageFree'), t('terms.storageDay')],
  // Labour.
  'rates by kind': ['rates', t('shop.rates')],
  'billing step': ['rates', t('rules.billingStep'), t('rules.billingWay')],
  'overlap list': ['rates', t('own.overlaps')],
  'menu list': ['rates', t('own.menu')],
  // Parts.
  matrix: [
    'prices',
    ...[t('rules.markup'), t('rules.markupUpTo', { n: 1 }), t('rules.markupOn', { n: 1 })],
    ...[t('rules.outside'), t('rules.outsideBp'), t('rules.outsideLimit')],
  ],
  guard: ['prices', t('rules.markupGuard')],
  pack: ['reminding', t('terms.packs')],
  'dead-stock months': ['reminding', t('terms.deadStockMonths')],
  'core window': ['reminding', t('terms.coreDays')],
  // Warranty.
  months: ['reminding', t('terms.warranty'), t('terms.months'), t('terms.source'), t('terms.checkedOn')],
  distance: ['reminding', `${t('terms.distance')}, ${t('cars.km')}`],
  edges: ['reminding', t('terms.edges')],
  text: ['garage', t('shop.warranty')],
  exclusions: ['garage', t('own.exclusions')],
  // Units.
  'km/miles': ['numbers', t('start.distance')],
  'N.m/lbf.ft': ['numbers', t('start.torque')],
  'L/qt': ['numbers', t('own.volume')],
  'date and time zone': ['numbers', t('own.dateForm'), t('start.zone')],
  'Retention years': ['reminding', t('privacy.years')],
  'Fluid: guards and limits': [
    'samples',
    ...(['fewestSamples', 'fewestKm', 'alertTenths', 'alarmTenths'] as const).map((key) => t(`own.${key}`)),
  ],
  // Roles.
  'discount %': ['people', t('shop.deskDiscount')],
  'who sees cost': [
    'people',
    ...(['mechanicPrices', 'deskCost', 'mechanicCost'] as const).map((key) => t(`own.sees-${key}`)),
  ],
  // Printed notices.
  'old parts': ['garage', t('own.notice-oldParts')],
  'labour basis': ['garage', t('own.notice-labourBasis')],
  storage: ['garage', t('own.notice-storage')],
  'test drive': ['garage', t('own.notice-testDrive')],
};
const PAGES = [...new Set(Object.values(TRADE).flatMap((place) => (place === null ? [] : [place[0]])))];

const rowOf = (page: Page, label: string) =>
  page
    .locator('.shop-part .setting')
    .filter({ has: page.getByText(label, { exact: true }).or(page.getByLabel(label, { exact: true })) })
    .first();

test('each setting of the trade has its place in Shop, and a sentence that says what it does', async ({
  garage,
  page,
}) => {
  const { revision } = await garage.did('Odile', 'shop.get', {});
  const note = { source: 'our own reading', checkedOn: '2026-11-02' };
  await garage.did('Odile', 'shop.change', {
    revision,
    settings: {
      supplies: { mode: 'percent', bp: 500, cap: null, floor: null, sentence: '' },
      overrun: { mode: 'lesser', bp: 1000, fixed: 5000, cap: null, base: 'gross', edge: 'inside', ...note },
      storage: { perDay: 1500, freeWorkingDays: 3, ...note },
      writtenEstimate: { above: 10_000, ...note },
      warrantyTerms: { months: 12, distance: 20_000, edgesIncluded: true, ...note },
      wasteFee: { amount: 450, words: 'Oil disposal', when: 'charged', ...note },
      coreTax: { way: 'share', bp: 1000, ...note },
      partsMarkup: {
        guard: true,
        bands: [
          { upTo: 5000, bp: 5000 },
          { upTo: null, bp: 3000 },
        ],
      },
      outsideMarkup: { bp: 1000, limit: 5000 },
    },
  });
  await enter(page, garage);
  for (const name of PAGES) {
    await page.goto(`${garage.door.host.address}/${hrefOf('shop', name)}`);
    await expect(page.locator('.shop-part section').first()).toBeVisible();
    for (const [entry, place] of Object.entries(TRADE)) {
      if (place === null || place[0] !== name) continue;
      for (const label of place.slice(1)) {
        // A price of an hour stands in a list with a heading of its own.
        const list = page.getByRole('heading', { name: label, exact: true }).locator('xpath=..');
        const row = entry === 'rates by kind' ? list : rowOf(page, label);
        await expect(row, `${entry}: ${label}`).toBeVisible();
        const said = row.locator('p').or(row.locator('xpath=ancestor::section[1]/p'));
        await expect(said.first(), `${entry}: ${label} says what it does`).toHaveText(/\S+ \S+ \S+/);
      }
    }
  }
  await page.goto(`${garage.door.host.address}/${hrefOf('shop', 'rates')}`);
  for (const label of [t('own.overlaps'), t('own.menu')])
    await expect(rowOf(page, label).getByRole('link')).toHaveAttribute('href', hrefOf('job-book'));
  await rowOf(page, t('own.menu')).getByRole('link').click();
  await expect(page.getByRole('heading', { level: 1, name: t('jobBook.title') })).toBeVisible();
});
