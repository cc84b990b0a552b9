import { afterEach, expect, test } from 'vitest';
import { inkIn, rasterise, readPages, textOf } from '../paper/read-back.ts';
import { type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
afterEach(async () => {
  await garage.end();
});

const intake = {
  customer: { add: { name: 'Ilse Vandermeer', phone: '555-0142' } },
  car: { add: { plate: 'KTB 4471', words: 'Corvane R', year: 2016, unit: 'km' as const } },
  complaint: 'It whines from the back.',
  mileage: 61_480,
  here: true,
};
const scratch = { view: 'right' as const, x: 180, y: 500, words: 'Scratch, right rear quarter' };
const dent = { view: 'top' as const, x: 500, y: 80, words: 'Dent, roof' };

async function slip(orderId: string, as = 'Desk') {
  const { name, base64 } = await garage.did(as, 'dropOff.pdf', { orderId });
  const bytes = new Uint8Array(Buffer.from(base64, 'base64'));
  const pages = await readPages(bytes);
  return { name, bytes, pages: pages.length, text: pages.map(textOf).join('\n') };
}

test('the slip says what was left, draws the marks of this visit and the signature', async () => {
  garage = await practiceShop();
  const strokes: [number, number][][] = [
    [
      [100, 700],
      [300, 200],
      [500, 800],
      [900, 300],
    ],
  ];
  const door = {
    ...{ fuel: 'half', keys: 2, keysWhere: 'hook 7', wheelLockKey: 'glove box', valuables: 'a child seat', strokes },
    ...{ testDrive: true, testDriveLimit: '10 km', oldParts: 'show' as const, marks: [scratch.words, 'Stone chips'] },
  };
  const booked = await garage.did('Desk', 'order.book', { ...intake, door, deposit: { amount: 15_000, way: 'card' } });
  await garage.did('Desk', 'mark.walkRound', { orderId: booked.id, outline: 'estate', add: [scratch, dent] });
  const { name, bytes, pages, text } = await slip(booked.id);
  expect(name).toBe(`Drop-off slip ${booked.number}.pdf`);
  expect(pages).toBe(1);
  for (const said of [
    ...[
      'Ilse Vandermeer',
      'KTB 4471',
      'It whines from the back.',
      '61,480 km',
      '2, hung at hook 7',
      'glove box',
      'half',
    ],
    ...['a child seat', 'agreed, no farther than 10 km', 'are shown to you', '150.00 USD', 'Stone chips', 'Dent, roof'],
    ...['Taken in by Desk', 'It is no order', 'Scratch, right rear quarter'],
  ])
    expect(text).toContain(said);
  // A mark that is drawn is not told a second time as words.
  expect(text.match(/Scratch, right rear quarter/g)).toHaveLength(1);
  // The signature stands over the line that it belongs to, the car over the words of its marks.
  const [page = []] = await readPages(bytes);
  const raster = await rasterise(bytes, 1, 1);
  const topOf = (words: string) => raster.height - (page.find((one) => one.text.startsWith(words))?.y ?? 0);
  expect(inkIn(raster, 50, topOf('Signed') - 70, 260, topOf('Signed') - 16)).toBeGreaterThan(60);
  const [head, first] = [topOf('Marks on') + 6, topOf('1.') - 12];
  for (const left of [50, 330]) expect(inkIn(raster, left, head, left + 230, first)).toBeGreaterThan(200);
});

test('left at night: nobody signed; a mechanic may not print it; German papers say it in German', async () => {
  garage = await practiceShop({ language: 'de', decimal: ',', group: '.', currency: 'EUR', prices: 'inclusive' });
  const { id } = await garage.did('Desk', 'order.book', { ...intake, door: { nightDrop: true } });
  const { name, text } = await slip(id);
  expect(name).toMatch(/^Annahmeschein \d+\.pdf$/);
  expect(text).toContain('Niemand hat unterschrieben');
  expect(text).toContain('Keine aufgeschrieben.');
  expect(await garage.refused('Runa', 'dropOff.pdf', { orderId: id })).toMatchObject({ code: 'not-allowed' });
  expect(await garage.refused('Desk', 'dropOff.pdf', { orderId: 'none' })).toMatchObject({ code: 'not-found' });
});

test('a deposit that was paid back in part is told as what is left of it, and none where all went back', async () => {
  garage = await practiceShop();
  const { id } = await garage.did('Desk', 'order.book', { ...intake, deposit: { amount: 15_000, way: 'card' } });
  const back = (amount: number) =>
    garage.did('Desk', 'payment.take', { orderId: id, kind: 'refund', way: 'card', amount });
  await back(5000);
  expect((await slip(id)).text).toContain('100.00 USD');
  await back(10_000);
  const { text } = await slip(id);
  expect(text).not.toMatch(/Deposit|0\.00 USD/);
});

test('dates on the slip are written as the shop writes them', async () => {
  garage = await practiceShop({ dateForm: 'year-month' });
  const { id } = await garage.did('Desk', 'order.book', intake);
  expect((await slip(id)).text).toContain('2026-03-10, 8:00');
});
