import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
beforeEach(async () => {
  garage = await practiceShop();
});
afterEach(async () => {
  await garage.end();
});

const intake = (change: object) => ({
  customer: { add: { name: 'Agnes Pell' } },
  car: { add: { plate: 'JJD 311', words: 'Oriel Estate', unit: 'km' } },
  complaint: 'Yearly service',
  here: true,
  ...change,
});

describe('bad input is answered in the closed set of errors and nothing is written', () => {
  test.each([
    ['letters in money', 'payment.take', { orderId: 'x', kind: 'deposit', way: 'cash', amount: '12a' }],
    ['money below zero', 'payment.take', { orderId: 'x', kind: 'deposit', way: 'cash', amount: -5 }],
    ['half a cent', 'payment.take', { orderId: 'x', kind: 'deposit', way: 'cash', amount: 0.5 }],
    ['ten megabytes of text', 'order.book', intake({ complaint: 'x'.repeat(10_000_000) })],
    [
      'a plate of emoji too long to be one',
      'order.book',
      intake({ car: { add: { plate: '🚗'.repeat(20), words: 'Car', unit: 'km' } } }),
    ],
    ['a date in 1899', 'car.odometer', { id: 'x', reading: 1, on: '1899-12-31', event: 'read' }],
    ['a day that is not', 'car.odometer', { id: 'x', reading: 1, on: '2026-02-30', event: 'read' }],
    [
      'the letter O in a VIN',
      'order.book',
      intake({ car: { add: { vin: 'CRWNWHEE8LO000417', words: 'Car', unit: 'km' } } }),
    ],
    ['a sign that turns what follows round', 'order.book', intake({ complaint: 'Noise \u202egnp.exe' })],
    ['a field nobody asked for', 'order.book', intake({ colour: 'green' })],
    ['nothing at all', 'order.book', null],
  ])('%s', async (_name, operation, input) => {
    const before = (await garage.did('Odile', 'trail.list', {})).rows.length;
    const error = await garage.refused('Desk', operation as 'order.book', input);
    expect(error.code).toBe('bad-input');
    expect((await garage.did('Odile', 'trail.list', {})).rows.length).toBe(before);
  });

  test('what does not fit is named with its figures, so that each door can say it', async () => {
    const book = (change: object) => garage.refused('Desk', 'order.book', intake(change));
    expect(await book({ complaint: 'x'.repeat(4001) })).toEqual({
      code: 'bad-input',
      fields: [{ path: 'complaint', problem: 'too-long', with: { most: 4000 } }],
    });
    expect(await book({ complaint: ' ' })).toMatchObject({ fields: [{ path: 'complaint', problem: 'missing' }] });
    expect(await book({ mileage: -1 })).toMatchObject({ fields: [{ problem: 'too-little', with: { least: 0 } }] });
    expect(await book({ promiseAt: -2_208_988_800_000 })).toMatchObject({
      fields: [{ path: 'promiseAt', problem: 'too-little' }],
    });
  });

  test('yes and no to one job in one breath', async () => {
    const { id: orderId } = await garage.did('Desk', 'order.book', intake({}) as never);
    const { id: jobId } = await garage.did('Desk', 'job.add', { orderId, job: { title: 'Service' } });
    const both = {
      orderId,
      jobs: [
        { jobId, answer: 'yes' as const },
        { jobId, answer: 'no' as const },
      ],
      upTo: { total: 100 },
      spoken: { name: 'Agnes Pell', role: 'customer' as const },
      way: 'person' as const,
    };
    expect(await garage.refused('Desk', 'decision.record', both)).toMatchObject({
      fields: [{ path: 'jobs.1.jobId', problem: 'same-row-twice' }],
    });
  });

  test('an operation that does not exist', async () => {
    const answer = await garage.shop.call('order.explode', {}, { personId: null, device: 'test' });
    expect(answer).toEqual({ ok: false, error: { code: 'unknown-operation', operation: 'order.explode' } });
  });

  test('T30, T31: mileage that falls is asked about, and a replaced clock explains it', async () => {
    const first = await garage.did('Desk', 'order.book', intake({ mileage: 95_000 }) as never);
    const again = { customer: { id: first.customerId }, car: { id: first.carId }, mileage: 3600 };
    expect(await garage.refused('Desk', 'order.book', intake(again))).toEqual({
      code: 'held',
      reasons: [{ what: 'mileage-lower', with: { last: 95_000, typed: 3600 } }],
    });
    await garage.did('Desk', 'order.book', intake({ ...again, mileageDoubt: 'clock-replaced' }) as never);
    const car = await garage.did('Desk', 'car.get', { id: first.carId });
    expect(car.readings.at(-1)).toMatchObject({ reading: 3600, trueDistance: 98_600 });
  });

  test('series have no gaps when an issue is rolled back', async () => {
    const { id, number } = await garage.did('Desk', 'order.book', intake({}) as never);
    await garage.refused(
      'Desk',
      'order.book',
      intake({ mileage: 5, booking: { bayId: 'no-such-bay', day: '2026-03-11', from: '08:00', hours: 1000 } }),
    );
    expect((await garage.did('Desk', 'order.book', intake({}) as never)).number).toBe(number + 1);
    expect(id).not.toBe('');
  });

  test('a mechanic may not price, and nobody signs for oneself', async () => {
    expect(await garage.refused('Runa', 'order.book', intake({}))).toMatchObject({ code: 'not-allowed' });
    expect(await garage.refused('nobody', 'today.get', {})).toEqual({
      code: 'not-allowed',
      why: 'sign-in',
      with: { needs: 'crew' },
    });
  });
});
