import { afterEach, beforeEach, expect, test } from 'vitest';
import type { InputOf } from '../../core/contract/index.ts';
import { type PracticeShop, practiceShop, SETTINGS } from './practice-shop.ts';
import { orderOf, printed, saidYes, setShop, sumsOf } from './sheet-orders.ts';

let garage: PracticeShop;
beforeEach(async () => {
  garage = await practiceShop({ supplies: { mode: 'itemise' } });
});
afterEach(async () => {
  await garage.end();
});

type Way = NonNullable<InputOf<'shop.change'>['settings']['coreTax']>['way'];
const NOTE = { bp: 1000, source: 'tax office, old parts', checkedOn: '2026-03-01' };
const UNIT = { kind: 'part', words: 'Carrier', quantity: 1000, unitPrice: 100_000, condition: 'rebuilt' } as const;
const core = (unitPrice: number) => ({ kind: 'core', words: 'Old carrier', quantity: 1000, unitPrice }) as const;

/** A rebuilt carrier with a charge of 350.00 on the old one, invoiced; then the charge goes back. */
async function outAndBack(way: Way, condition: 'rebuilt' | 'new' = 'rebuilt') {
  await setShop(garage, { coreTax: { way, ...NOTE } });
  const { id, jobs } = await orderOf(garage, [{ ...UNIT, condition }, core(35_000)]);
  const { gross } = await sumsOf(garage, id);
  await saidYes(garage, id, [jobs[0]?.id ?? ''], gross);
  const invoice = await garage.did('Desk', 'invoice.issue', { orderId: id });
  // What the owner sets afterwards moves neither the invoice nor its credit.
  await setShop(garage, { coreTax: { way: way === 'none' ? 'kept' : 'none', ...NOTE } });
  const note = await garage.did('Desk', 'creditNote.issue', {
    invoicePaperId: invoice.paperId,
    reason: 'old unit came back',
    lines: [{ lineId: jobs[0]?.lineIds[1] ?? '', quantity: 1000 }],
  });
  expect((await garage.did('Odile', 'care.verify', {})).faults).toEqual([]);
  return { invoice: invoice.gross, note: [note.net, note.tax, note.gross], paper: await printed(garage, note.paperId) };
}

test('a shop from before it was there: taxed, and the tax goes back with the charge', async () => {
  expect((await garage.did('Odile', 'shop.get', {})).settings?.coreTax).toMatchObject({ way: 'refunded' });
  expect(await outAndBack('refunded')).toMatchObject({ invoice: 162_000, note: [35_000, 7000, 42_000] });
});

test('taxed, and the tax stays', async () => {
  const { invoice, note, paper } = await outAndBack('kept');
  expect([invoice, note]).toEqual([162_000, [35_000, 0, 35_000]]);
  expect(paper).toMatch(/Credited.*350\.00/s);
});

test('the tax stays on a new part only', async () => {
  expect((await outAndBack('kept-on-new')).note).toEqual([35_000, 7000, 42_000]);
  expect((await outAndBack('kept-on-new', 'new')).note).toEqual([35_000, 0, 35_000]);
});

test('no tax on the charge, out or back', async () => {
  expect(await outAndBack('none')).toMatchObject({ invoice: 155_000, note: [35_000, 0, 35_000] });
});

test('a share of the exchange price: 1000.00 + 190.00 + 19.00 = 1209.00 on the sheet, the quote and the invoice', async () => {
  const taxes = SETTINGS.taxes.map((tax) => ({ ...tax, name: 'VAT', ratePpm: 190_000 }));
  await setShop(garage, { taxes, coreTax: { way: 'share', ...NOTE } });
  const { id, jobs } = await orderOf(garage, [UNIT, core(0)]);
  const sums = await sumsOf(garage, id);
  expect(sums).toMatchObject({ net: 100_000, tax: 20_900, gross: 120_900 });
  expect(sums.taxes).toMatchObject([
    { base: 100_000, amount: 19_000, oldUnits: false },
    { base: 10_000, amount: 1900, oldUnits: true },
  ]);
  const quote = await garage.did('Desk', 'quote.issue', { orderId: id });
  expect(quote.gross).toBe(120_900);
  await saidYes(garage, id, [jobs[0]?.id ?? ''], 120_900);
  expect((await garage.did('Desk', 'order.get', { id })).yes).toMatchObject({ inside: true, coveredTotal: 120_900 });
  const invoice = await garage.did('Desk', 'invoice.issue', { orderId: id });
  const paper = await printed(garage, invoice.paperId);
  expect(paper).toMatch(/VAT 19 ?% on 1,000\.00 190\.00/);
  expect(paper).toMatch(/VAT 19 ?% on the old unit’s value of 100\.00 19\.00/);
  expect(paper).toMatch(/1,209\.00/);
  const credited = await garage.did('Desk', 'creditNote.issue', {
    invoicePaperId: invoice.paperId,
    reason: 'taken back whole',
    lines: (jobs[0]?.lineIds ?? []).map((lineId) => ({ lineId, quantity: 1000 })),
  });
  expect(credited.gross).toBe(120_900);
  expect((await garage.did('Odile', 'care.verify', {})).faults).toEqual([]);
});

test('prices that hold their tax: what the old unit bears comes on top, in the window too', async () => {
  const taxes = SETTINGS.taxes.map((tax) => ({ ...tax, name: 'VAT', ratePpm: 190_000 }));
  await setShop(garage, { taxes, prices: 'inclusive', coreTax: { way: 'share', ...NOTE } });
  const { id } = await orderOf(garage, [{ ...UNIT, unitPrice: 119_000 }, core(0)]);
  expect(await sumsOf(garage, id)).toMatchObject({ net: 100_000, tax: 20_900, gross: 120_900 });
  const quote = await garage.did('Desk', 'quote.issue', { orderId: id });
  const paper = await printed(garage, quote.paperId);
  expect(paper.indexOf('old unit’s value')).toBeLessThan(paper.indexOf('1,209.00'));
});
