import { afterEach, beforeEach, expect, test } from 'vitest';
import { type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
beforeEach(async () => {
  garage = await practiceShop();
});
afterEach(async () => {
  await garage.end();
});

async function book(name: string, phone: string, plate: string, vin = '') {
  return garage.did('Desk', 'order.book', {
    customer: { add: { name, phone } },
    car: { add: { plate, words: 'Corvane R', unit: 'km', vin } },
    complaint: 'It whines.',
    here: true,
  });
}
const found = async (text: string, as = 'Desk') =>
  (await garage.did(as, 'find.line', { text })).hits.map((hit) => `${hit.kind} ${hit.headline} by ${hit.by}`);

test('the whole plate stands before one that begins with it, and that before one that holds it', async () => {
  await book('Anna Berg', '555-0101', 'XKT 44');
  await book('Bo Carlsen', '555-0102', 'KT 447');
  await book('Cara Dorn', '555-0103', 'KT 44');
  expect(await found('kt44')).toEqual(['car KT 44 by plate', 'car KT 447 by plate', 'car XKT 44 by plate']);
  // O for nought and I for one, as they are mistyped on a wet plate.
  await book('Dirk Elm', '555-0104', 'OI 10');
  expect(await found('0110')).toContain('car OI 10 by plate');
});

test('a name by any of its words, without its accents, before names that only hold it', async () => {
  await book('Lillian Stern', '555-0110', 'A 1');
  await book('Bjørn Lian', '555-0111', 'A 2');
  await book('Lian Ådal', '555-0112', 'A 3');
  const names = await found('lian');
  expect(names.slice(0, 2).toSorted()).toEqual(['customer Bjørn Lian by name', 'customer Lian Ådal by name']);
  expect(names[2]).toBe('customer Lillian Stern by name');
  expect(await found('bjorn')).toEqual(['customer Bjørn Lian by name']);
});

test('a number finds its order, and papers of that number for whoever may read them', async () => {
  const order = await book('Anna Berg', '555-0101', 'KT 44');
  await garage.did('Desk', 'job.add', {
    orderId: order.id,
    job: { title: 'Look' },
    lines: [{ kind: 'labour', words: 'Look', quantity: 1000, unitPrice: 9600 }],
  });
  const quote = await garage.did('Desk', 'quote.issue', { orderId: order.id });
  expect(await found(`${order.number}`)).toEqual([`order ${order.number} by order`]);
  expect(await found(`${quote.number}`)).toEqual([`paper ${quote.number} by quote`]);
  expect(await found(`${quote.number}`, 'Runa')).toEqual([]);
});

test('phones by their digits, VINs by a piece of them, parts by number and words', async () => {
  await book('Anna Berg', '555-0101', 'KT 44', 'CRWNWHEE8L0000417');
  await garage.did('Desk', 'part.add', { number: 'GO-7590', words: 'Gear oil', unit: 'L', price: 3150, cost: 1480 });
  expect(await found('5550101')).toEqual(['customer Anna Berg by phone']);
  expect(await found('8L000041')).toEqual(['car CRWNWHEE8L0000417 by VIN']);
  expect(await found('go7590')).toEqual(['part GO-7590 by number']);
  expect(await found('gear oil')).toEqual(['part GO-7590 by number']);
});

test('letters that no accent comes off: ł, ø, ß, đ are found by l, o, ss, d, in names and in parts', async () => {
  await book('Łucja Strauß', '555-0120', 'B 1');
  await book('Đorđe Øster', '555-0121', 'B 2');
  await garage.did('Desk', 'part.add', { number: 'ZL-1', words: 'Żółty smar', unit: 'L', price: 100, cost: 50 });
  expect(await found('lucja')).toEqual(['customer Łucja Strauß by name']);
  expect(await found('strauss')).toEqual(['customer Łucja Strauß by name']);
  expect(await found('Strauß')).toEqual(['customer Łucja Strauß by name']);
  expect(await found('dorde')).toEqual(['customer Đorđe Øster by name']);
  expect(await found('ster')).toEqual(['customer Đorđe Øster by name']);
  expect(await found('zolty')).toEqual(['part ZL-1 by number']);
});

test('three characters that somebody remembers: mid-plate, the end of a VIN or of a phone, before those inside others', async () => {
  await book('Anna Berg', '0171 555 0417', 'KTB 4471', 'CRWNWHEE8L0000417');
  await book('Bo Carlsen', '0171 417 9999', 'JJD 311', 'CRWNWHEE417000003');
  expect(await found('B44')).toEqual(['car KTB 4471 by plate']);
  expect((await found('0417')).slice(0, 1)).toEqual(['car CRWNWHEE8L0000417 by VIN']);
  expect((await found('417'))[0]).toBe('car CRWNWHEE8L0000417 by VIN');
  for (const text of ['+49 171 5550417', '0049 (0)171 555-0417', '171/5550417'])
    expect(await found(text)).toContain('customer Anna Berg by phone');
  expect(await found('+49 171 5550418')).toEqual([]);
});

test('what was changed is found as it is now, and no more as it was; quotes and signs are no trap', async () => {
  const { customerId } = await book('Anna Berg', '555-0101', 'KT 44');
  await garage.did('Desk', 'customer.change', { id: customerId, revision: 1, change: { name: 'Anna Lundqvist' } });
  expect(await found('undqv')).toEqual(['customer Anna Lundqvist by name']);
  expect(await found('anna berg')).toEqual([]);
  for (const text of ['an"na', "a' OR 1", 'AND OR NOT', '{name} : x', 'anna*', '(anna)', '--x']) await found(text);
});

test('each thing stands once, and what is nowhere finds nothing', async () => {
  const { carId } = await book('Anna Berg', '555-0101', 'KT 44');
  const { hits } = await garage.did('Desk', 'find.line', { text: 'KT 44' });
  expect(hits.filter((hit) => hit.id === carId)).toHaveLength(1);
  expect(await found('zzzz')).toEqual([]);
  expect(await found('%')).toEqual([]);
});

test('what a customer said leads to the order, the newest first, after whatever has the words in its name', async () => {
  const long = 'Since the long drive to the coast in the rain it has whined somewhere behind the seat on the overrun.';
  const said = (complaint: string, plate: string, name: string) =>
    garage.did('Desk', 'order.book', {
      ...{ customer: { add: { name } }, car: { add: { plate, words: 'Corvane R', unit: 'km' } } },
      ...{ complaint, here: true },
    });
  const first = await said(long, 'B 1', 'Anna Berg');
  const second = await said('Über 80 Brummen, Overrun too', 'B 2', 'Bo Carlsen');
  expect(await found('overrun')).toEqual([`order ${second.number} by complaint`, `order ${first.number} by complaint`]);
  const { hits } = await garage.did('Desk', 'find.line', { text: 'the overrun' });
  expect(hits[0]?.detail).toBe('Anna Berg: “… behind the seat on the overrun.”');
  await said('As before', 'B 3', 'Overrun Haulage');
  expect((await found('overrun'))[0]).toBe('customer Overrun Haulage by name');
  expect(await found('uber 80')).toEqual([`order ${second.number} by complaint`]);
});

test('under a car and a customer stands what is open of them, each order once; what is gone or called off does not', async () => {
  const first = await book('Anna Berg', '555-0101', 'KT 44');
  const second = await garage.did('Desk', 'order.book', {
    ...{ customer: { id: first.customerId }, car: { add: { plate: 'ZZ 9', words: 'Oriel 2', unit: 'km' } } },
    ...{ complaint: 'Squeals.', here: true },
  });
  const open = async (text: string) =>
    (await garage.did('Desk', 'find.line', { text })).hits.map((hit) => [hit.headline, hit.open.map(({ id }) => id)]);
  expect(await open('kt44')).toEqual([['KT 44', [first.id]]]);
  expect(await open('berg')).toEqual([['Anna Berg', [second.id, first.id]]]);
  expect((await garage.did('Desk', 'find.line', { text: 'zz9' })).hits[0]?.open).toEqual([
    { id: second.id, number: expect.any(Number), car: 'ZZ 9 Oriel 2' },
  ]);
  const { revision } = await garage.did('Desk', 'order.get', { id: second.id });
  await garage.did('Desk', 'order.cancel', { id: second.id, revision, why: 'Sold it.' });
  expect(await open('berg')).toEqual([['Anna Berg', [first.id]]]);
});
