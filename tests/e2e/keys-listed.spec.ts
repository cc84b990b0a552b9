import { type Combo, KEY_MAP, keyName, PLACE_KEYS } from '../../renderer/frame/key-map.ts';
import { t } from '../../renderer/words/t.ts';
import { now, today } from './clock.ts';
import { type Garage, ROAD_TEST } from './garage.ts';
import { type Ids, PLAYS, playPlaces } from './key-plays.ts';
import { KeyStage } from './key-stage.ts';
import { expect, test } from './shop-fixture.ts';
import { enter } from './window.ts';

/** Every key that the sheet under ? lists does what its line says, where it says. That no other does: tests/house/keys. */

const DAY = 86_400_000;
const WASHER = { kind: 'part', words: 'Plug washer', quantity: 2000, unitPrice: 210 } as const;

async function somethingEverywhere(garage: Garage): Promise<Ids> {
  const { bays } = await garage.did('Odile', 'shop.get', {});
  const booking = { bayId: bays[0]?.id ?? '', day: '2026-11-16', from: '09:00', hours: 2000 };
  const steps = ['Clean it', 'Wipe it dry', 'Look at it'].map((words, at) => ({ n: at + 1, do: words }));
  const content = { title: 'Clean and look', bookHours: 300, sourceOfFigures: '', lines: [], cautions: [], steps };
  const saved = await garage.did('Odile', 'jobBook.save', { id: null, basedOn: 0, content });
  const benchId = await garage.booked({
    ...{ customer: { add: { name: 'Per Halloran' } }, mileage: null },
    car: { add: { plate: 'HLM 93', words: 'Oriel', unit: 'km' } },
    booking: { ...booking, day: today() },
  });
  await garage.did('Odile', 'job.fromBook', { orderId: benchId, bookJobId: saved.id });
  await garage.yes(benchId);
  const orderId = await garage.booked({ booking, here: false });
  await garage.job(orderId, 'Find the whine', [ROAD_TEST, WASHER]);
  await garage.did('Odile', 'quote.issue', { orderId });
  for (const number of ['OR-583', 'OR-584'])
    await garage.did('Odile', 'part.add', {
      number,
      words: `O-ring ${number}`,
      price: 640,
      cost: 300,
      unit: '',
      bin: 'D 07',
    });
  return { orderId, benchId, bookJobId: saved.id };
}

/** Two years of orders, one every twelve days, and the newest of them with a paper. */
async function manyOrders(garage: Garage): Promise<void> {
  const first = await garage.booked({}, now() - 730 * DAY);
  const { customer, car } = await garage.order(first);
  for (let ago = 720; ago > 0; ago -= 12)
    await garage.booked(
      { customer: { id: customer.id }, car: { id: car.id }, complaint: 'Noise', mileage: null },
      now() - ago * DAY,
    );
}

/** Two windows beside each other share the map; each goes through its places in one shop. */
const HALVES = [
  ['everywhere', 'sheet', 'yes', 'days'],
  ['lists', 'orders', 'bookings', 'jobBook'],
] as const;

test('each place of the map is in one half', () => {
  expect(HALVES.flat().toSorted()).toEqual(KEY_MAP.map(({ where }) => where).toSorted());
});

for (const half of HALVES)
  test(`keys that are listed under ${half.map((where) => t(`keys.where-${where}`)).join(', ')}`, async ({
    garage,
    page,
  }) => {
    if (half.some((where) => where === 'orders')) await manyOrders(garage);
    const ids = await somethingEverywhere(garage);
    await enter(page, garage);
    const stage = new KeyStage(page, garage);
    for (const { where, rows } of KEY_MAP.filter((part) => half.some((one) => one === part.where)))
      for (const { does, keys } of rows)
        await test.step(`${t(`keys.where-${where}`)}, ${keys.map(keyName).join(', ')}: ${does}`, async () => {
          stage.pressed.clear();
          await PLAYS[does](stage, ids);
          const asked: readonly Combo[] = keys;
          expect(asked.filter((key) => !stage.pressed.has(key))).toEqual([]);
        });
    if (!half.some((where) => where === 'everywhere')) return;
    await playPlaces(stage);
    expect(Object.values(PLACE_KEYS).filter((key) => !stage.pressed.has(key))).toEqual([]);
  });
