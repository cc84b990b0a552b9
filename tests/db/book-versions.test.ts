import { expect, test } from 'vitest';
import { bookJob } from './bench-job.ts';
import { at, practiceShop } from './practice-shop.ts';

test('versions of a job: who and when, what changed, which is in use, how many orders began with each', async () => {
  const garage = await practiceShop();
  const content = bookJob([{ do: 'Lift' }, { do: 'Drain' }]);
  const { id } = await garage.did('Desk', 'jobBook.save', { id: null, basedOn: 0, content });
  const { id: orderId } = await garage.did('Desk', 'order.book', {
    ...{
      customer: { add: { name: 'Ilse Vandermeer' } },
      car: { add: { plate: 'KVR 221', words: 'Corvane R', unit: 'km' } },
    },
    ...{ complaint: 'Whines.', mileage: 42_180, here: true },
  });
  await garage.did('Desk', 'job.fromBook', { orderId, bookJobId: id });
  garage.now = at('2026-03-11T09:00');
  const longer = bookJob([{ do: 'Lift' }, { do: 'Drain' }, { do: 'Fill' }], { bookHours: 1200 });
  await garage.did('Odile', 'jobBook.save', { id, basedOn: 1, content: longer, draft: true });
  const { rows } = await garage.did('Runa', 'jobBook.versions', { id });
  expect(rows.map(({ version, by, inUse, orders }) => [version, by, inUse, orders])).toEqual([
    [2, 'Odile', false, 0],
    [1, 'Desk', true, 1],
  ]);
  expect(rows[0]).toMatchObject({
    at: at('2026-03-11T09:00'),
    changed: { hours: { from: 1000, to: 1200 }, added: 1, takenOut: 0, changed: 0, moved: false, lines: false },
  });
  expect(rows[1]?.changed).toBeNull();
  expect(await garage.refused('Runa', 'jobBook.versions', { id: 'nobody' })).toMatchObject({ code: 'not-found' });
  await garage.end();
});

test('a job that shares the taking apart with one on the sheet takes so many hours less while both are there', async () => {
  const garage = await practiceShop();
  const save = (content: ReturnType<typeof bookJob>) =>
    garage.did('Desk', 'jobBook.save', { id: null, basedOn: 0, content });
  const seal = await save(bookJob([{ do: 'Seal out' }], { title: 'Left output seal', bookHours: 1100 }));
  const swap = await save(
    bookJob([{ do: 'Carrier out' }], { title: 'Swap', goesWith: [{ bookJobId: seal.id, hoursLess: 300 }] }),
  );
  const { id: orderId } = await garage.did('Desk', 'order.book', {
    ...{
      customer: { add: { name: 'Ilse Vandermeer' } },
      car: { add: { plate: 'KVR 221', words: 'Corvane R', unit: 'km' } },
    },
    ...{ complaint: 'Whines.', mileage: 42_180, here: true },
  });
  const first = await garage.did('Desk', 'job.fromBook', { orderId, bookJobId: swap.id });
  await garage.did('Desk', 'job.fromBook', { orderId, bookJobId: seal.id });
  const order = await garage.did('Desk', 'order.get', { id: orderId });
  expect(order.jobs[0]?.lines[0]).toMatchObject({ charged: 1000, overlapJobId: null });
  expect(order.jobs[1]?.lines[0]).toMatchObject({ charged: 800, overlap: 300, overlapJobId: first.id });
  await garage.did('Desk', 'job.takeOut', { id: first.id, revision: 1 });
  expect((await garage.did('Desk', 'order.get', { id: orderId })).jobs[0]?.lines[0]).toMatchObject({ charged: 1100 });
  await garage.end();
});

test('a fixed price of the book comes onto the sheet with the job, by the version in use, and stays when the book changes', async () => {
  const garage = await practiceShop({ supplies: { mode: 'itemise' }, taxes: [] });
  const content = bookJob([{ do: 'Drain' }], { bookHours: 1000, fixedPrice: 69_000 });
  const { id: bookJobId } = await garage.did('Desk', 'jobBook.save', { id: null, basedOn: 0, content });
  const { id: orderId } = await garage.did('Desk', 'order.book', {
    ...{ customer: { add: { name: 'Ilse Vandermeer' } }, car: { add: { words: 'Corvane R', unit: 'km' } } },
    ...{ complaint: 'Whines.', here: true },
  });
  const first = await garage.did('Desk', 'job.fromBook', { orderId, bookJobId });
  // Dearer from the next version on; a draft of it changes nothing yet.
  const dearer = { ...content, fixedPrice: 71_000 };
  await garage.did('Desk', 'jobBook.save', { id: bookJobId, basedOn: 1, content: dearer, draft: true });
  const second = await garage.did('Desk', 'job.fromBook', { orderId, bookJobId });
  await garage.did('Desk', 'jobBook.save', { id: bookJobId, basedOn: 2, content: dearer });
  await garage.did('Desk', 'job.fromBook', { orderId, bookJobId });
  const order = await garage.did('Desk', 'order.get', { id: orderId });
  expect(order.jobs.map(({ fixedPrice, amount }) => [fixedPrice, amount])).toEqual([
    [69_000, 69_000],
    [69_000, 69_000],
    [71_000, 71_000],
  ]);
  expect(order.sums?.gross).toBe(69_000 + 69_000 + 71_000);
  const { rows } = await garage.did('Desk', 'jobBook.versions', { id: bookJobId });
  expect(rows.map(({ changed }) => changed?.price ?? null)).toEqual([false, true, null]);
  // A mechanic works by the book without its prices.
  expect((await garage.did('Runa', 'jobBook.get', { id: bookJobId })).content.fixedPrice).toBeNull();
  expect([first.letter, second.letter]).toEqual(['A', 'B']);
  await garage.end();
});
