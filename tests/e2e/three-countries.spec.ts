import type { Page } from '@playwright/test';
import type { InputOf, OperationName, OutputOf } from '../../core/contract/index.ts';
import { hrefOf } from '../../renderer/frame/router.ts';
import { t, type WordKey } from '../../renderer/words/t.ts';
import { expect, test } from './shop-fixture.ts';
import { field } from './window.ts';

/** A tax as its owner reads it in a rule of their own: invented here, since none is shipped. Rate in thousandths of a percent. */
interface Tax {
  readonly name: string;
  readonly rate: string;
  readonly thousandths: number;
  readonly kinds: readonly ('labour' | 'part' | 'fluid')[];
}
/** `checked`: 2 November 2026, as the country's garages write it. */
const COUNTRIES: readonly {
  readonly what: string;
  readonly code: string;
  readonly checked: string;
  readonly taxes: readonly Tax[];
}[] = [
  {
    what: 'no sales tax on labour',
    code: 'US',
    checked: '11/02/2026',
    taxes: [{ name: 'Sales tax', rate: '6.25', thousandths: 6250, kinds: ['part', 'fluid'] }],
  },
  {
    what: 'one VAT on everything',
    code: 'DE',
    checked: '02/11/2026',
    taxes: [{ name: 'VAT', rate: '19', thousandths: 19_000, kinds: ['labour', 'part', 'fluid'] }],
  },
  {
    what: 'two taxes side by side',
    code: 'CA',
    checked: '2026-11-02',
    taxes: [
      { name: 'Federal tax', rate: '5', thousandths: 5000, kinds: ['labour', 'part', 'fluid'] },
      { name: 'Other tax', rate: '9.975', thousandths: 9975, kinds: ['labour', 'part', 'fluid'] },
    ],
  },
];

/** Reckoned here by itself, in whole numbers: 1.5 h, two parts, 1.35 L; half a smallest coin goes up. */
const half = (sum: bigint, by: bigint) => (2n * sum + by) / (2n * by);
const LINES = { labour: (9600n * 15n) / 10n, part: 2n * 4115n, fluid: half(1890n * 135n, 100n) };
const NET = Number(Object.values(LINES).reduce((all, one) => all + one, 0n));
const taxOf = ({ thousandths, kinds }: Tax) =>
  Number(half(kinds.reduce((all, kind) => all + LINES[kind], 0n) * BigInt(thousandths), 100_000n));

async function begin(page: Page, code: string, taxes: readonly Tax[]): Promise<void> {
  await page.getByLabel(t('start.country')).selectOption(code);
  const comma = code === 'DE';
  await field(page, t('start.name')).fill('Saltmarsh Motor Works');
  await field(page, t('start.hour')).fill(comma ? '96,00' : '96.00');
  for (const [at, tax] of taxes.entries()) {
    if (at > 0) await page.getByRole('button', { name: t('start.anotherTax') }).click();
    const group = page.getByRole('group', { name: t('start.tax', { n: at + 1 }) });
    await field(group, t('start.taxName')).fill(tax.name);
    await field(group, t('start.taxRate')).fill(comma ? tax.rate.replace('.', ',') : tax.rate);
    await field(group, t('start.source')).fill('our own reading of our own rule');
    await group.getByLabel(t('start.checkedOn')).fill('2026-11-02');
    for (const kind of tax.kinds) await group.getByText(t(`start.${kind}` as WordKey), { exact: true }).click();
  }
  await field(page, t('start.person')).fill('Odile');
  await page.getByLabel(t('start.code'), { exact: true }).fill('odile-1');
  await page.getByRole('button', { name: t('start.go') }).click();
  await expect(page.getByRole('heading', { level: 1, name: t('frame.enterTitle') })).toBeVisible();
  await page.getByLabel(t('frame.enterCode')).fill('odile-1');
  await page.getByRole('button', { name: t('frame.enterGo') }).click();
  await expect(page.getByRole('heading', { level: 1, name: t('today.title') })).toBeVisible();
}

for (const { what, code, checked, taxes } of COUNTRIES)
  test(`a garage with ${what} is set up by clicking, and its quote and invoice come to what was reckoned apart`, async ({
    shop,
    page,
  }) => {
    await page.goto(shop.host.newLink('window'));
    await begin(page, code, taxes);
    const call = async <N extends OperationName>(operation: N, input: InputOf<N>, personId: string | null) => {
      const answer = await shop.shop.call(operation, input, { personId, device: 'test' });
      if (!answer.ok) throw new Error(`${operation}: ${JSON.stringify(answer.error)}`);
      return answer.output as OutputOf<N>;
    };
    const { people, settings } = await call('shop.get', {}, null);
    const odile = people[0]?.id ?? '';
    for (const tax of settings?.taxes ?? [])
      expect(tax).toMatchObject({ source: 'our own reading of our own rule', checkedOn: '2026-11-02' });

    const order = await call(
      'order.book',
      {
        customer: { add: { name: 'Ilse Vandermeer' } },
        car: { add: { plate: 'KTB 4471', words: 'Corvane R', unit: settings?.distance ?? 'km' } },
        ...{ complaint: 'It whines.', mileage: 42_180, here: true },
      },
      odile,
    );
    const job = await call(
      'job.add',
      {
        orderId: order.id,
        job: { title: 'Reseal' },
        lines: [
          { kind: 'labour', words: 'Fit', quantity: 1500, unit: 'h', unitPrice: 9600 },
          { kind: 'part', words: 'Seal', quantity: 2000, unitPrice: 4115, condition: 'new' },
          { kind: 'fluid', words: 'Gear oil', quantity: 1350, unit: 'L', unitPrice: 1890 },
        ],
      },
      odile,
    );
    const each = taxes.map(taxOf);
    const gross = NET + each.reduce((all, one) => all + one, 0);
    const whole = await call('order.get', { id: order.id }, odile);
    expect(whole.sums).toMatchObject({ net: NET, gross });
    expect(whole.sums?.taxes.map(({ amount }) => amount)).toEqual(each);

    const quote = await call('quote.issue', { orderId: order.id }, odile);
    const { quotes } = await call('quote.list', { orderId: order.id }, odile);
    expect(quotes).toMatchObject([{ paperId: quote.paperId, tax: gross - NET, gross }]);
    await call(
      'decision.record',
      {
        ...{ orderId: order.id, quotePaperId: quote.paperId, way: 'person' },
        jobs: [{ jobId: job.id, answer: 'yes' }],
        upTo: { total: gross },
        spoken: { name: 'Ilse Vandermeer', role: 'customer' },
      },
      odile,
    );
    const { revision } = await call('order.get', { id: order.id }, odile);
    await call('order.mileageOut', { id: order.id, revision, mileage: 42_190 }, odile);
    const invoice = await call('invoice.issue', { orderId: order.id, overrides: [] }, odile);
    expect(invoice).toMatchObject({ toPay: gross });

    // In the window: the sum, as this shop writes it, and each tax with the day it was checked.
    const written = new Intl.NumberFormat(code === 'DE' ? 'de-DE' : 'en-US', { minimumFractionDigits: 2 });
    await page.goto(`${shop.host.address}/${hrefOf('orders', order.id)}`);
    await expect(page.getByRole('main')).toContainText(written.format(gross / 100));
    await page.goto(`${shop.host.address}/${hrefOf('shop', 'tax')}`);
    for (const tax of taxes)
      await expect(page.getByRole('region', { name: tax.name }).getByLabel(t('start.checkedOn'))).toHaveValue(checked);
  });
