import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { at, type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
const WARRANTY = { months: 12, distance: 20_000, edgesIncluded: true, source: '', checkedOn: null };
beforeEach(async () => {
  garage = await practiceShop({ warrantyTerms: WARRANTY });
});
afterEach(async () => {
  await garage.end();
});

const visit = (mileage: number, of?: { customerId: string; carId: string }) =>
  garage.did('Desk', 'order.book', {
    customer: of ? { id: of.customerId } : { add: { name: 'Per Halloran', phone: '555-0177' } },
    car: of ? { id: of.carId } : { add: { plate: 'OYB 902', words: 'Oriel Estate', unit: 'km' } },
    complaint: 'It whines.',
    ...{ mileage, here: true },
  });
const job = (orderId: string, title: string, price = 15_400) =>
  garage.did('Desk', 'job.add', {
    ...{ orderId, job: { title } },
    lines: [{ kind: 'part', words: title, quantity: 1000, unitPrice: price }],
  });
const answer = (orderId: string, jobId: string, said: 'yes' | 'no') =>
  garage.did('Desk', 'decision.record', {
    orderId,
    jobs: [{ jobId, answer: said }],
    upTo: said === 'yes' ? { total: 90_000 } : null,
    spoken: { name: 'Per Halloran', role: 'customer' },
    way: 'person',
  });
const due = async (until: string) => (await garage.did('Desk', 'reminder.list', { until })).rows;
const tried = (row: { id: string; revision: number }, outcome: 'no' | 'later' | 'nobody' | 'booked', askOn?: string) =>
  garage.did('Desk', 'reminder.try', { id: row.id, revision: row.revision, outcome, askOn: askOn ?? null });

// T29: 38 000 km on 2025-09-01, 42 180 km on 2026-03-10, due at 48 000 km or on 2027-03-10.
test('a service by distance or date, whichever first: guessed from the visits, told as a guess', async () => {
  garage.now = at('2025-09-01T08:00');
  const first = await visit(38_000);
  garage.now = at('2026-03-10T08:00');
  await visit(42_180, first);
  await garage.did('Desk', 'reminder.add', {
    ...{ carId: first.carId, source: 'service', words: 'Gear oil', dueOn: '2027-03-10', dueMileage: 48_000 },
  });
  garage.now = at('2026-06-18T08:00');
  const all = await garage.did('Desk', 'reminder.list', { carId: first.carId });
  expect(all.rows).toMatchObject([
    { on: '2026-11-30', guessed: true, days: 190, perDayX100: 2200, expected: 44_380, due: false },
  ]);
  // Two weeks ahead by the shop's own setting.
  expect(await due('2026-11-15')).toEqual([]);
  expect(await due('2026-11-16')).toMatchObject([{ words: 'Gear oil', customer: { name: 'Per Halloran' }, due: true }]);
});

// T30, by the program's own operations.
test('over a replaced clock the distance that is due is the true one, and shown as the new clock shows it', async () => {
  garage.now = at('2025-01-01T08:00');
  const first = await visit(90_000);
  garage.now = at('2025-07-01T08:00');
  const replaced = { id: first.carId, reading: 95_000, on: '2025-07-01', event: 'replaced' as const, newStart: 0 };
  await garage.did('Desk', 'car.odometer', replaced);
  garage.now = at('2025-12-28T08:00');
  await visit(3600, first);
  await garage.did('Desk', 'reminder.add', { carId: first.carId, words: 'Belt', dueMileage: 5600 });
  const [row] = (await garage.did('Desk', 'reminder.list', { carId: first.carId })).rows;
  expect(row).toMatchObject({ dueMileage: 5600, expected: 3600, guessed: true });
});

describe('declined work', () => {
  // T12: declined on 2026-03-10 at 42 180 km, asked again after 30 days or 2000 km.
  test('is called about on its day, is not on the invoice, and shows at the next visit', async () => {
    const first = await visit(42_180);
    const [done, pads] = [await job(first.id, 'Oil'), await job(first.id, 'Brake pads')];
    await answer(first.id, done.id, 'yes');
    await answer(first.id, pads.id, 'no');
    await garage.did('Desk', 'order.mileageOut', { id: first.id, revision: 1, mileage: 42_181 });
    const invoice = await garage.did('Odile', 'invoice.issue', { orderId: first.id });
    expect(invoice.gross).toBe(18_480);
    expect(await due('2026-04-08')).toEqual([]);
    const [row] = await due('2026-04-09');
    expect(row).toMatchObject({
      ...{ source: 'declined', words: 'Brake pads', amount: 15_400, dueOn: '2026-04-09', dueMileage: 44_180 },
    });
    garage.now = at('2026-04-10T08:00');
    const next = await visit(43_000, first);
    const order = await garage.did('Desk', 'order.get', { id: next.id });
    expect(order.declinedBefore).toMatchObject([{ title: 'Brake pads', followUpOn: '2026-04-09' }]);
  });

  test('a yes after all ends it', async () => {
    const first = await visit(42_180);
    const pads = await job(first.id, 'Brake pads');
    await answer(first.id, pads.id, 'no');
    expect(await due('2026-05-01')).toHaveLength(1);
    await answer(first.id, pads.id, 'yes');
    expect(await due('2026-05-01')).toEqual([]);
    const [row] = (await garage.did('Desk', 'reminder.list', { carId: first.carId })).rows;
    expect(row).toMatchObject({ closeWhy: 'said-yes' });
  });

  test('after two noes nobody asks again; later is asked on the day they said', async () => {
    const first = await visit(42_180);
    await answer(first.id, (await job(first.id, 'Brake pads')).id, 'no');
    garage.now = at('2026-04-09T09:00');
    const [row] = await due('2026-04-09');
    const later = await tried(row ?? { id: '', revision: 0 }, 'later', '2026-05-01');
    expect(later.closed).toBe(false);
    expect(await due('2026-04-30')).toEqual([]);
    garage.now = at('2026-05-01T09:00');
    const no = await tried(later, 'no');
    expect(await due('2026-05-02')).toEqual([]);
    expect(await due('2026-05-31')).toHaveLength(1);
    garage.now = at('2026-06-01T09:00');
    expect(await tried(no, 'no')).toMatchObject({ closed: true });
    expect(await due('2030-01-01')).toEqual([]);
    const over = { id: row?.id ?? '', revision: 4, outcome: 'no' };
    expect(await garage.refused('Desk', 'reminder.try', over)).toMatchObject({
      fields: [{ problem: 'closed-already' }],
    });
    expect((await garage.did('Odile', 'care.verify', {})).sound).toBe(true);
  });
});

test('later wants a day, and one that is to come', async () => {
  const { carId } = await visit(42_180);
  const row = await garage.did('Desk', 'reminder.add', { carId, words: 'Wipers', dueOn: '2026-03-10' });
  const later = { ...row, outcome: 'later' };
  expect(await garage.refused('Desk', 'reminder.try', later)).toMatchObject({ fields: [{ path: 'askOn' }] });
  expect(await garage.refused('Desk', 'reminder.try', { ...later, askOn: '2026-03-09' })).toMatchObject({
    fields: [{ problem: 'in-the-past' }],
  });
  expect(await garage.refused('Desk', 'reminder.add', { carId, words: 'Wipers' })).toMatchObject({
    fields: [{ path: 'dueOn' }],
  });
});

test('whoever does not want to be reminded is not, and a car that changed hands is not called about', async () => {
  const { carId, customerId } = await visit(42_180);
  const own = await garage.did('Desk', 'reminder.add', { carId, words: 'Wipers', dueOn: '2026-03-10' });
  expect(await due('2026-03-10')).toHaveLength(1);
  const consents = { reminders: false, photos: null, history: null };
  await garage.did('Desk', 'customer.change', { id: customerId, revision: 1, change: { consents } });
  expect(await due('2026-03-10')).toEqual([]);
  await garage.did('Desk', 'customer.change', { id: customerId, revision: 2, change: { consents: null } });
  garage.now = at('2026-03-20T08:00');
  const next = await garage.did('Desk', 'customer.add', { name: 'Agnes Pell' });
  await garage.did('Desk', 'car.owner', { id: carId, revision: 1, customerId: next.id, from: '2026-03-20' });
  expect(await due('2026-03-20')).toEqual([]);
  await garage.did('Desk', 'reminder.close', { ...own, why: 'sold' });
});

// T35's terms: 12 months or 20 000 km from 2026-03-10 at 42 180 km.
test('an invoice leaves what is due after its jobs, the wheels, and the end of the warranty', async () => {
  const { rows } = await garage.did('Desk', 'jobBook.list', {});
  const book = await garage.did('Desk', 'jobBook.get', { id: rows[0]?.id ?? '' });
  const steps = [{ n: 1, do: 'Wheels on', recheckCard: true }];
  const after = [{ source: 'run-in' as const, words: 'Run-in oil', days: 60, distance: 800 }];
  const saved = await garage.did('Odile', 'jobBook.save', {
    ...{ id: book.id, basedOn: book.version, content: { ...book.content, steps, after } },
  });
  const first = await visit(42_180);
  const added = await garage.did('Desk', 'job.fromBook', { orderId: first.id, bookJobId: saved.id });
  await answer(first.id, added.id, 'yes');
  await garage.did('Runa', 'step.tick', { jobId: added.id, n: 1, state: 'done' });
  const { revision } = await garage.did('Desk', 'order.get', { id: first.id });
  await garage.did('Desk', 'order.mileageOut', { id: first.id, revision, mileage: 42_200 });
  const { stops } = await garage.did('Desk', 'order.get', { id: first.id });
  const overrides = stops.map(({ what }) => ({ what, reason: 'Stands for the test' }));
  await garage.did('Odile', 'invoice.issue', { orderId: first.id, overrides });
  const all = (await garage.did('Desk', 'reminder.list', { carId: first.carId })).rows;
  expect(
    all
      .map(({ source, words, dueOn, dueMileage }) => ({ source, words, dueOn, dueMileage }))
      .toSorted((a, b) => a.source.localeCompare(b.source)),
  ).toEqual([
    { source: 'run-in', words: 'Run-in oil', dueOn: '2026-05-09', dueMileage: 43_000 },
    {
      source: 'warranty',
      words: 'The warranty on the work of order 1187 ends',
      dueOn: '2027-03-10',
      dueMileage: 62_200,
    },
    { source: 'wheel-recheck', words: 'Tighten the wheels again', dueOn: '2026-03-24', dueMileage: 42_280 },
  ]);
  expect((await due('2026-03-24')).map((row) => row.source)).toEqual(['wheel-recheck']);
  expect((await due('2026-05-09')).map((row) => row.source)).toEqual(['wheel-recheck', 'run-in']);
  expect(await due('2027-02-23')).toEqual([]);
  expect((await due('2027-02-24')).map((row) => row.source)).toEqual(['warranty']);
  // Long past, and nobody's call any more.
  expect(await due('2027-06-01')).toEqual([]);
});

test('a reminder as a message and as a letter in the customer’s language, and its tries in their log', async () => {
  const { carId, customerId } = await visit(42_180);
  await garage.did('Desk', 'customer.change', {
    ...{ id: customerId, revision: 1, change: { language: 'de', address: ['Quay 4', 'Port Ansel'] } },
  });
  const row = await garage.did('Desk', 'reminder.add', { carId, words: 'Bremsen', dueOn: '2026-03-20' });
  const draft = await garage.did('Desk', 'message.draft', { about: 'reminder', reminderId: row.id });
  expect(draft).toMatchObject({ language: 'de', subject: 'OYB 902: Bremsen', missing: [], phone: '555-0177' });
  expect(draft.text).toContain('Saltmarsh Motor Works, 555-0100');
  const letter = await garage.did('Desk', 'reminder.letter', { id: row.id });
  expect(letter.name).toBe('OYB 902 Bremsen.pdf');
  expect(Buffer.from(letter.base64, 'base64').length).toBeGreaterThan(5000);
  await garage.did('Desk', 'reminder.try', { ...row, outcome: 'letter' });
  expect((await garage.did('Desk', 'message.list', { customerId })).rows).toMatchObject([
    { kind: 'reminder', about: 'letter', words: 'Bremsen', reached: false },
  ]);
});

test('a new reading moves the day that a distance is expected on, in the list, too', async () => {
  garage.now = at('2025-09-01T08:00');
  const first = await visit(38_000);
  await garage.did('Desk', 'reminder.add', { carId: first.carId, words: 'Gear oil', dueMileage: 48_000 });
  expect(await due('2035-01-01')).toEqual([]);
  garage.now = at('2026-03-10T08:00');
  await visit(42_180, first);
  expect(await due('2026-11-29')).toEqual([]);
  expect(await due('2026-11-30')).toMatchObject([{ words: 'Gear oil', on: '2026-11-30' }]);
  garage.now = at('2026-04-20T08:00');
  await garage.did('Runa', 'car.odometer', { id: first.carId, reading: 48_100, on: '2026-04-20', event: 'read' });
  expect(await due('2026-04-20')).toMatchObject([{ words: 'Gear oil', on: '2026-04-20', guessed: false }]);
  expect((await garage.did('Odile', 'care.verify', {})).sound).toBe(true);
});
