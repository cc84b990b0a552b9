import { afterEach, beforeEach, expect, test } from 'vitest';
import { type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
let orderId = '';
let partId = '';
beforeEach(async () => {
  garage = await practiceShop({ supplies: { mode: 'itemise' } });
  const order = await garage.did('Desk', 'order.book', {
    customer: { add: { name: 'Ilse Vandermeer' } },
    car: { add: { plate: 'KTB 4471', words: 'Corvane R', unit: 'km' } },
    ...{ complaint: 'It whines.', here: true },
  });
  orderId = order.id;
  const part = { number: 'OS-2214', words: 'Output seal', unit: '', price: 1573, cost: 619, onHand: 4000 };
  partId = (await garage.did('Desk', 'part.add', part)).id;
  await garage.did('Desk', 'job.add', {
    orderId,
    job: { title: 'Reseal' },
    lines: [
      { kind: 'labour', words: 'Fit', quantity: 1000, unit: 'h', unitPrice: 9700 },
      { kind: 'part', words: 'Output seal', partId, quantity: 1000, unitPrice: 1573, unitCost: 619, condition: 'new' },
    ],
  });
});
afterEach(() => garage.end());

/** What somebody is answered, of the sheet, of stock and of people. */
async function answered(as: string) {
  const order = await garage.did(as, 'order.get', { id: orderId });
  const stock = await garage.did(as, 'part.list', {});
  const { people, rates } = await garage.did(as, 'shop.get', {});
  const closing = await garage.did(as, 'closeOut.get', { orderId });
  const part = order.jobs[0]?.lines.find((line) => line.kind === 'part');
  return {
    price: part?.unitPrice ?? null,
    gross: order.sums?.gross ?? null,
    ceiling: order.yes.ceiling ?? null,
    shelf: stock.rows.find((row) => row.id === partId)?.price ?? null,
    hour: rates[0]?.price ?? null,
    cost: part?.unitCost ?? null,
    worth: stock.rows.find((row) => row.id === partId)?.value ?? null,
    pay: people.find((one) => one.name === 'Piet')?.payRate ?? null,
    margin: closing.margin === null ? null : 'seen',
  };
}
// 97.00 + 15.73 = 112.73, and 20 % on it 22.546, so 135.28; four seals at 6.19 are 24.76.
const PRICES = { price: 1573, gross: 13_528, ceiling: 0, shelf: 1573, hour: 9600 };
const COST = { cost: 619, worth: 2476, pay: 2400, margin: 'seen' };
const none = <T extends object>(of: T) => Object.fromEntries(Object.keys(of).map((key) => [key, null]));

async function set(sees: { mechanicPrices: boolean; deskCost: boolean; mechanicCost: boolean }) {
  const { revision } = await garage.did('Odile', 'shop.get', {});
  await garage.did('Odile', 'shop.change', { revision, settings: { sees } });
}

test('by default the owner sees prices and cost, the desk prices, a mechanic neither', async () => {
  expect(await answered('Odile')).toEqual({ ...PRICES, ...COST });
  expect(await answered('Desk')).toEqual({ ...PRICES, ...none(COST) });
  expect(await answered('Runa')).toEqual({ ...none(PRICES), ...none(COST) });
});

test.each([
  { mechanicPrices: true, deskCost: false, mechanicCost: false },
  { mechanicPrices: false, deskCost: true, mechanicCost: false },
  { mechanicPrices: false, deskCost: false, mechanicCost: true },
  { mechanicPrices: true, deskCost: true, mechanicCost: true },
])('as the owner sets it: %o', async (sees) => {
  await set(sees);
  expect(await answered('Odile')).toEqual({ ...PRICES, ...COST });
  expect(await answered('Desk')).toEqual({ ...PRICES, ...(sees.deskCost ? COST : none(COST)) });
  expect(await answered('Runa')).toEqual({
    ...(sees.mechanicPrices ? PRICES : none(PRICES)),
    ...(sees.mechanicCost ? COST : none(COST)),
  });
});

test('whoever may not see cost gets no figure of it in any answer, whatever the words round it', async () => {
  for (const [who, figures] of [
    ['Desk', /\b(619|2476|2400)\b/],
    ['Runa', /\b(619|2476|2400|1573|9700|13528)\b/],
  ] as const) {
    for (const [operation, input] of [
      ['order.get', { id: orderId }],
      ['closeOut.get', { orderId }],
      ['part.list', {}],
      ['part.moves', { partId }],
      ['stock.get', {}],
      ['shop.get', {}],
      ['today.get', {}],
      ['quote.list', { orderId }],
    ] as const)
      expect(JSON.stringify(await garage.did(who, operation, input as never)), `${who} ${operation}`).not.toMatch(
        figures,
      );
  }
});

test('only the owner sets it', async () => {
  const { revision } = await garage.did('Desk', 'shop.get', {});
  const settings = { sees: { mechanicPrices: true, deskCost: true, mechanicCost: true } };
  for (const who of ['Desk', 'Runa'])
    expect(await garage.refused(who, 'shop.change', { revision, settings })).toMatchObject({ code: 'not-allowed' });
});
