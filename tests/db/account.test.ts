import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { at, type PracticeShop, practiceShop } from './practice-shop.ts';

/** T34 played: limit 5000.00, 3850.00 invoiced and open, 620.00 said yes to, a new job of 600.00. No supplies, no tax. */
const CASE = { limit: 500_000, open: 385_000, said: 62_000, asked: 60_000, exposure: 507_000, over: 7000 };

let garage: PracticeShop;
beforeEach(async () => {
  garage = await practiceShop({ supplies: { mode: 'itemise' }, taxes: [] });
});
afterEach(async () => {
  await garage.end();
});

const fleet = (more: { poRequired?: boolean; poBefore?: 'invoice' | 'work'; creditLimit?: number | null } = {}) =>
  garage.did('Odile', 'customer.add', { name: 'Harbour Fleet', creditLimit: CASE.limit, ...more });
const book = (accountId: string) =>
  garage.did('Desk', 'order.book', {
    ...{ customer: { id: accountId }, car: { add: { words: 'Van', unit: 'km' } }, complaint: 'x', here: true },
  });
const job = (orderId: string, unitPrice: number) =>
  garage.did('Desk', 'job.add', {
    ...{ orderId, job: { title: 'Work' } },
    lines: [{ kind: 'labour', words: 'Work', quantity: 1000, unitPrice }],
  });
const yes = (orderId: string, jobId: string, total: number) =>
  garage.did('Desk', 'decision.record', {
    ...{ orderId, jobs: [{ jobId, answer: 'yes' as const }], upTo: { total }, way: 'person' as const },
    spoken: { name: 'Harbour Fleet', role: 'customer' },
  });
const order = (id: string) => garage.did('Desk', 'order.get', { id });
const agreed = async (accountId: string, sum: number) => {
  garage.now += 60_000;
  const { id } = await book(accountId);
  const work = await job(id, sum);
  return { ...(await yes(id, work.id, sum)), id, jobId: work.id };
};
const owing = async (accountId: string, sum: number) => {
  const { id } = await agreed(accountId, sum);
  await garage.did('Odile', 'invoice.issue', {
    ...{ orderId: id, overrides: [{ what: 'mileage-out-missing', reason: 'Not driven' }] },
  });
  return id;
};

describe('the limit of an account', () => {
  test('T34: told at the yes, work waits, the owner lets it pass once, by name, with a reason', async () => {
    const { id: accountId } = await fleet();
    await owing(accountId, CASE.open);
    await agreed(accountId, CASE.said);
    const over = await agreed(accountId, CASE.asked);
    const figures = {
      ...{ limit: CASE.limit, openInvoices: CASE.open, authorised: CASE.said, mine: CASE.asked },
      ...{ exposure: CASE.exposure, over: CASE.over },
    };
    expect(over.credit).toEqual({ accountId, name: 'Harbour Fleet', held: true, figures, pass: null });
    const held = await garage.refused('Desk', 'clock.on', { jobId: over.jobId, personId: garage.people.get('Runa') });
    expect(held).toMatchObject({ reasons: [{ what: 'over-credit-limit', with: { over: CASE.over } }] });
    expect(await garage.refused('Runa', 'clock.on', { jobId: over.jobId })).toEqual({
      ...{ code: 'held', reasons: [{ what: 'beyond-credit-limit', with: { name: 'Harbour Fleet' } }] },
    });
    const pass = { orderId: over.id, reason: 'Their cheque is here' };
    expect(await garage.refused('Desk', 'credit.letPass', pass)).toMatchObject({ code: 'not-allowed' });
    await garage.did('Odile', 'credit.letPass', pass);
    expect((await order(over.id)).credit).toMatchObject({
      ...{ held: false, pass: { by: 'Odile', reason: pass.reason }, figures },
    });
    await garage.did('Runa', 'clock.on', { jobId: over.jobId });
    expect(await garage.refused('Odile', 'credit.letPass', pass)).toMatchObject({
      reasons: [{ what: 'inside-credit-limit' }],
    });
    // A higher yes wants a word of its own.
    const more = await yes(over.id, over.jobId, CASE.asked + 1);
    expect(more.credit).toMatchObject({ held: true, figures: { over: CASE.over + 1 }, pass: null });
    expect(
      await garage.shop.call('care.verify', {}, { personId: garage.people.get('Odile') ?? null, device: 'test' }),
    ).toMatchObject({ ok: true, output: { sound: true } });
  });

  test('exactly at the limit is inside; one minor unit more is not', async () => {
    const { id: accountId } = await fleet();
    await owing(accountId, CASE.open);
    const edge = await agreed(accountId, CASE.limit - CASE.open);
    expect(edge.credit).toMatchObject({ held: false, figures: { over: 0, exposure: CASE.limit } });
    expect((await yes(edge.id, edge.jobId, CASE.limit - CASE.open + 1)).credit).toMatchObject({
      ...{ held: true, figures: { over: 1 } },
    });
  });

  test('a later yes does not hold work that was inside when it was agreed, and a payment frees what waits', async () => {
    const { id: accountId } = await fleet();
    const invoiced = await owing(accountId, CASE.open);
    const first = await agreed(accountId, 100_000);
    const second = await agreed(accountId, 50_000);
    expect([(await order(first.id)).credit?.held, (await order(second.id)).credit?.held]).toEqual([false, true]);
    await garage.did('Desk', 'payment.take', { orderId: invoiced, kind: 'payment', way: 'transfer', amount: 35_000 });
    expect((await order(second.id)).credit).toMatchObject({ held: false, figures: { exposure: CASE.limit } });
  });

  test('a limit that has moved counts at once, is told at booking, and only the owner moves it', async () => {
    const { id: accountId } = await fleet();
    await owing(accountId, CASE.open);
    const { revision, fields } = await garage.did('Desk', 'customer.get', { id: accountId });
    const change = { id: accountId, revision, change: { creditLimit: 300_000 } };
    expect(await garage.refused('Desk', 'customer.change', change)).toMatchObject({ code: 'not-allowed' });
    // The desk may send the whole row with the limit as it stands.
    const named = await garage.did('Desk', 'customer.change', { ...change, change: { ...fields, note: 'Pays late' } });
    await garage.did('Odile', 'customer.change', { ...change, revision: named.revision });
    const told = await book(accountId);
    expect(told.credit).toMatchObject({ held: false, figures: { limit: 300_000, exposure: CASE.open, over: 85_000 } });
  });

  test('the account as a whole: owed, said yes to, asked now; what was paid ahead is not owed again', async () => {
    const { id: accountId } = await fleet();
    await owing(accountId, CASE.open);
    const one = await agreed(accountId, CASE.said);
    await garage.did('Desk', 'payment.take', { orderId: one.id, kind: 'deposit', way: 'card', amount: 2000 });
    await job(one.id, CASE.asked);
    expect(await garage.did('Desk', 'customer.credit', { id: accountId })).toEqual({
      ...{ limit: CASE.limit, openInvoices: CASE.open, authorised: CASE.said - 2000, asked: CASE.asked, over: 5000 },
      orders: [{ orderId: one.id, number: 1188, upTo: CASE.said, asked: CASE.asked, held: false, pass: null }],
    });
    const none = await garage.did('Desk', 'customer.add', { name: 'Per Halloran' });
    expect((await garage.did('Desk', 'customer.credit', { id: none.id })).limit).toBe(null);
  });

  test('counts for whoever pays, not for whoever brings it', async () => {
    const { id: accountId } = await fleet({ creditLimit: 1000 });
    const { id } = await garage.did('Desk', 'order.book', {
      ...{ customer: { add: { name: 'Tomas Reyk' } }, car: { add: { words: 'Van', unit: 'km' } }, complaint: 'x' },
      ...{ here: true, payerId: accountId },
    });
    const work = await job(id, 1001);
    expect((await yes(id, work.id, 1001)).credit).toMatchObject({ held: true, name: 'Harbour Fleet' });
  });
});

describe('their own order number', () => {
  const started = async (poBefore: 'invoice' | 'work') => {
    const { id: accountId } = await fleet({ creditLimit: null, poRequired: true, poBefore });
    const one = await agreed(accountId, 10_000);
    return { ...one, clock: () => garage.shop.call('clock.on', { jobId: one.jobId }, runa(), { at: garage.now }) };
  };
  const runa = () => ({ personId: garage.people.get('Runa') ?? null, device: 'test' });
  const stops = async (id: string) => (await order(id)).stops.map((stop) => stop.what);

  test('before the invoice: work goes on, the invoice waits', async () => {
    const { id, clock } = await started('invoice');
    expect(await clock()).toMatchObject({ ok: true });
    expect(await stops(id)).toContain('po-missing');
  });

  test('before any work: nobody clocks on until it is there', async () => {
    const { id, clock } = await started('work');
    expect(await clock()).toMatchObject({ error: { reasons: [{ what: 'po-before-work' }] } });
    const { revision, poHoldsWork } = await order(id);
    expect(poHoldsWork).toBe(true);
    await garage.did('Desk', 'order.change', { id, revision, change: { poNumber: 'HF-7' } });
    garage.now = at('2026-03-10T11:00');
    expect(await clock()).toMatchObject({ ok: true });
    expect(await stops(id)).not.toContain('po-missing');
  });
});
