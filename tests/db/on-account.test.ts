import { afterEach, beforeEach, expect, test } from 'vitest';
import { type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
beforeEach(async () => {
  garage = await practiceShop({ supplies: { mode: 'itemise' }, taxes: [] });
});
afterEach(async () => {
  await garage.end();
});

const book = async (customer: { id: string } | { add: { name: string } }, payerId: string | null = null) => {
  const booked = await garage.did('Desk', 'order.book', {
    ...{ customer, payerId, car: { add: { words: 'Van', unit: 'km' as const } }, complaint: 'x', here: true },
  });
  const job = await garage.did('Desk', 'job.add', {
    orderId: booked.id,
    job: { title: 'Work' },
    lines: [{ kind: 'labour', words: 'Work', quantity: 1000, unitPrice: 10_000 }],
  });
  const quote = await garage.did('Desk', 'quote.issue', { orderId: booked.id });
  await garage.did('Desk', 'decision.record', {
    ...{ orderId: booked.id, quotePaperId: quote.paperId, jobs: [{ jobId: job.id, answer: 'yes' as const }] },
    ...{ upTo: { total: 10_000 }, spoken: { name: 'Somebody', role: 'customer' as const }, way: 'person' as const },
  });
  return { orderId: booked.id, customerId: booked.customerId };
};
const bill = (orderId: string) => garage.did('Desk', 'invoice.issue', { orderId });

/** What three places say that an account owes on its invoices, and what the credit page says of work without one. */
async function told(customerId: string) {
  const credit = await garage.did('Desk', 'customer.credit', { id: customerId });
  const owing = await garage.did('Desk', 'statement.owing', {});
  return {
    page: (await garage.did('Desk', 'customer.get', { id: customerId })).owed,
    credit: credit.openInvoices,
    statement: (await garage.did('Desk', 'statement.get', { customerId })).closing,
    owing: owing.rows.find((row) => row.customerId === customerId)?.closing ?? 0,
    work: credit.authorised,
  };
}
const owed = (sum: number, work = 0) => ({ page: sum, credit: sum, statement: sum, owing: sum, work });

test('work is on the account of whoever will pay it, its invoice on that of whoever it is made out to', async () => {
  const { id: fleet } = await garage.did('Desk', 'customer.add', { name: 'Harbour Fleet' });
  const { orderId, customerId } = await book({ add: { name: 'Tomas Reyk' } }, fleet);
  expect(await told(fleet)).toEqual(owed(0, 10_000));
  expect(await told(customerId)).toEqual(owed(0));
  await bill(orderId);
  expect(await told(fleet)).toEqual(owed(10_000));
  expect(await told(customerId)).toEqual(owed(0));
});

test('an invoice stays on the account that it is made out to when entries are parted again', async () => {
  const { orderId, customerId: old } = await book({ add: { name: 'P. Halloran' } });
  const { id: standing } = await garage.did('Desk', 'customer.add', { name: 'Per Halloran' });
  const { joinId } = await garage.did('Desk', 'customer.join', {
    ...{ fromId: old, fromRevision: 1, intoId: standing, intoRevision: 1 },
  });
  await bill(orderId);
  expect(await told(standing)).toEqual(owed(10_000));
  // The order goes back to whoever brought the car; the invoice was made out to the other entry and stays there.
  await garage.did('Desk', 'customer.part', { joinId });
  expect((await garage.did('Desk', 'order.get', { id: orderId })).customer.id).toBe(old);
  expect(await told(standing)).toEqual(owed(10_000));
  expect(await told(old)).toEqual(owed(0));
});

test('what is paid ahead stands on the account of whoever will pay', async () => {
  const { id: fleet } = await garage.did('Desk', 'customer.add', { name: 'Harbour Fleet' });
  const { orderId, customerId } = await book({ add: { name: 'Tomas Reyk' } }, fleet);
  await garage.did('Desk', 'payment.take', { orderId, kind: 'deposit', way: 'card', amount: 4000 });
  const unapplied = async (id: string) =>
    (await garage.did('Desk', 'statement.get', { customerId: id })).unapplied.map(({ sum }) => sum);
  expect(await unapplied(fleet)).toEqual([4000]);
  expect(await unapplied(customerId)).toEqual([]);
});
