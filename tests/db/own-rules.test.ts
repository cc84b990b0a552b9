import { afterEach, expect, test } from 'vitest';
import { readPages, textOf } from '../paper/read-back.ts';
import { type PracticeShop, practiceShop, type SETTINGS } from './practice-shop.ts';

let garage: PracticeShop;
afterEach(() => garage.end());

/** A car at the door with one priced job of 200.00 and tax, 240.00. */
async function withJob(settings: Partial<typeof SETTINGS>) {
  garage = await practiceShop({ supplies: { mode: 'itemise' }, ...settings });
  const { id } = await garage.did('Desk', 'order.book', {
    customer: { add: { name: 'Ilse Vandermeer', phone: '555-0142' } },
    car: { add: { plate: 'KTB 4471', words: 'Corvane R', unit: 'km' } },
    ...{ complaint: 'It whines.', mileage: 42_180, here: true },
  });
  const job = await garage.did('Desk', 'job.add', {
    orderId: id,
    job: { title: 'Reseal' },
    lines: [{ kind: 'labour', words: 'Fit', quantity: 2000, unit: 'h', unitPrice: 10_000 }],
  });
  const yes = (way: 'phone' | 'signed', quotePaperId: string | null) =>
    garage.did('Desk', 'decision.record', {
      ...{ orderId: id, quotePaperId, way, reached: '555-0142' },
      jobs: [{ jobId: job.id, answer: 'yes' }],
      upTo: { total: 24_000 },
      spoken: { name: 'Ilse Vandermeer', role: 'customer' },
      ...(way === 'signed' ? { strokes: [[[0, 0] as [number, number], [900, 900] as [number, number]]] } : {}),
    });
  const lacks = async (as = 'Desk') => (await garage.did(as, 'order.get', { id })).yes.unwritten;
  const leave = async () => {
    const { revision } = await garage.did('Runa', 'order.get', { id });
    await garage.did('Runa', 'order.mileageOut', { id, revision, mileage: 42_190 });
  };
  return { id, yes, lacks, leave };
}

async function paperText(paperId: string) {
  const { base64 } = await garage.did('Desk', 'paper.read', { id: paperId });
  const pages = await readPages(new Uint8Array(Buffer.from(base64, 'base64')));
  return pages.map(textOf).join('\n').replaceAll('\u00a0', ' ');
}

test('above the shop’s sum a spoken yes without a quote on paper is told, and what mends it mends it', async () => {
  const rule = { above: 10_000, source: 'our county’s page', checkedOn: '2026-03-01' };
  const { id, yes, lacks } = await withJob({ writtenEstimate: rule });
  expect(await lacks()).toBeNull();
  await yes('phone', null);
  expect(await lacks()).toBe('no-quote');
  expect(await lacks('Runa')).toBeNull();
  const quote = await garage.did('Desk', 'quote.issue', { orderId: id });
  expect(await lacks()).toBe('by-word');
  await yes('phone', quote.paperId);
  expect(await lacks()).toBeNull();
});

test('without a rule, and at exactly its sum, nothing is told; it never holds the invoice', async () => {
  const none = await withJob({});
  await none.yes('phone', null);
  expect(await none.lacks()).toBeNull();
  await garage.end();
  const exact = await withJob({ writtenEstimate: { above: 24_000, source: '', checkedOn: null } });
  await exact.yes('phone', null);
  expect(await exact.lacks()).toBeNull();
  await garage.end();
  const above = await withJob({ writtenEstimate: { above: 23_999, source: '', checkedOn: null } });
  await above.yes('phone', null);
  expect(await above.lacks()).toBe('no-quote');
  await above.leave();
  expect((await garage.did('Desk', 'closeOut.get', { orderId: above.id })).stops).toEqual([]);
});

test('notices stand on the papers where they belong, the exclusions behind the warranty, and dates as the shop writes them', async () => {
  const printed = {
    oldParts: 'Old parts are yours for the asking.',
    labourBasis: 'Labour is charged by book hours.',
    storage: 'Cars that stay cost a daily fee.',
    testDrive: 'We may drive your car a short way.',
  };
  const { id, yes, leave } = await withJob({
    printed,
    warrantyExclusions: 'Wear is no defect.',
    dateForm: 'year-month',
  });
  const quote = await garage.did('Desk', 'quote.issue', { orderId: id });
  const quoted = await paperText(quote.paperId);
  for (const words of [printed.oldParts, printed.labourBasis, printed.storage]) expect(quoted).toContain(words);
  expect(quoted).not.toContain(printed.testDrive);
  expect(quoted).toMatch(/whichever comes first\. Wear\s+(total\s+)?is no defect\./);
  expect(quoted).toContain('2026-03-24');
  expect(quoted).not.toMatch(/\bMar\b/);

  const slip = await garage.did('Desk', 'dropOff.pdf', { orderId: id });
  const pages = await readPages(new Uint8Array(Buffer.from(slip.base64, 'base64')));
  const slipped = pages.map(textOf).join('\n');
  for (const words of [printed.storage, printed.testDrive]) expect(slipped).toContain(words);
  for (const words of [printed.oldParts, printed.labourBasis]) expect(slipped).not.toContain(words);

  await yes('signed', quote.paperId);
  await leave();
  const invoice = await garage.did('Desk', 'invoice.issue', {
    orderId: id,
    overrides: [{ what: 'old-parts-unanswered', reason: 'none came off' }],
  });
  const invoiced = await paperText(invoice.paperId);
  for (const words of [printed.oldParts, printed.labourBasis]) expect(invoiced).toContain(words);
  expect(invoiced).toMatch(/whichever comes first\. Wear\s+(reference\.\s+)?is no defect\./);
  expect(invoiced).toContain('Pay by 2026-03-24');
  for (const words of [printed.storage, printed.testDrive]) expect(invoiced).not.toContain(words);
});

test('the guards of a sample’s history are the shop’s own: T32 is no alarm where the owner asks for more', async () => {
  garage = await practiceShop({
    fluidGuards: { fewestSamples: 2, fewestKm: 500, alertTenths: 90, alarmTenths: 100 },
  });
  const car = await garage.did('Desk', 'car.add', { plate: 'A 1', words: 'Corvane R', unit: 'km', customerId: null });
  const drawn = async (ppm: number, distance: number) => {
    garage.now += 90 * 86_400_000;
    const order = await garage.did('Desk', 'order.book', {
      customer: { add: { name: `Owner ${garage.now}` } },
      ...{ car: { id: car.id }, complaint: 'Oil.', here: true },
    });
    const sample = await garage.did('Runa', 'sample.draw', {
      ...{ orderId: order.id, unit: { name: 'Rear axle' }, fluid: 'gear oil', distance },
    });
    await garage.did('Desk', 'sample.result', {
      ...{ id: sample.id, revision: 1, on: new Date(garage.now).toISOString().slice(0, 10) },
      result: { metals: [{ element: 'Fe', ppm: ppm * 1000 }] },
    });
    const trend = await garage.did('Desk', 'sample.trend', { id: sample.id });
    return { ...trend.metals[0], fewestSamples: trend.fewestSamples, fewestKm: trend.fewestKm };
  };
  await drawn(180, 10_000);
  await drawn(150, 7500);
  // Two earlier ones are enough here: rates 18 and 20, mean 19, deviation √2; 17.5 lies inside.
  expect(await drawn(210, 12_000)).toMatchObject({ says: 'normal', count: 2, fewestSamples: 2, fewestKm: 500 });
  await drawn(168, 8000);
  // Rates 18, 20, 17.5, 21: mean 19.125, deviation 1.652. 35 is past 9 of them (33.99), inside 10 (35.64).
  expect(await drawn(140, 4000)).toMatchObject({ says: 'alert', count: 4, mean: 19_125, deviation: 1652 });
  // 800 km would be too short by the usual 1000.
  expect((await drawn(40, 800)).because).toBe('');
});

test('an alarm that is not further out than the alert is refused, at its own field', async () => {
  garage = await practiceShop();
  const { revision } = await garage.did('Odile', 'shop.get', {});
  const fluidGuards = { fewestSamples: 4, fewestKm: 1000, alertTenths: 30, alarmTenths: 30 };
  expect(await garage.refused('Odile', 'shop.change', { revision, settings: { fluidGuards } })).toMatchObject({
    code: 'bad-input',
    fields: [{ path: 'settings.fluidGuards.alarmTenths', problem: 'alarm-below-alert' }],
  });
});

test('the next number of each series is shown to whoever has signed in, and moves with the papers', async () => {
  const { id } = await withJob({});
  const next = async (as: string) => (await garage.did(as, 'shop.get', {})).nextNumbers;
  const before = { order: 1188, quote: 300, invoice: 1045, creditNote: 20, receipt: 500 };
  expect(await next('Runa')).toEqual(before);
  expect(await next('nobody')).toBeNull();
  await garage.did('Desk', 'quote.issue', { orderId: id });
  expect(await next('Desk')).toEqual({ ...before, quote: 301 });
});
