import { afterEach, beforeEach, expect, test } from 'vitest';
import { at, type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
beforeEach(async () => {
  garage = await practiceShop({ supplies: { mode: 'itemise' } });
});
afterEach(async () => {
  await garage.end();
});

const order = () =>
  garage.did('Desk', 'order.book', {
    customer: { add: { name: 'Per Halloran', phone: '555-0177', email: 'per@halloran.example', tellBy: 'message' } },
    car: { add: { plate: 'OYB 902', words: 'Oriel Estate', unit: 'km' } },
    ...{ complaint: 'It whines.', here: true },
  });
const job = (orderId: string, title: string, kind: 'labour' | 'part', unitPrice: number) =>
  garage.did('Desk', 'job.add', {
    ...{ orderId, job: { title } },
    lines: [{ kind, words: title, quantity: 1000, unitPrice }],
  });
const yes = (orderId: string, jobId: string, total: number) =>
  garage.did('Desk', 'decision.record', {
    ...{ orderId, jobs: [{ jobId, answer: 'yes' as const }], upTo: { total }, way: 'person' as const },
    spoken: { name: 'Per Halloran', role: 'customer' },
  });

test('“we found” names the held jobs with their sums and what they add to the yes', async () => {
  const { id } = await order();
  await yes(id, (await job(id, 'Look', 'labour', 10_000)).id, 12_000);
  await job(id, 'Bush', 'part', 11_440);
  const draft = await garage.did('Desk', 'message.draft', { about: 'found', orderId: id });
  expect(draft).toMatchObject({ subject: 'OYB 902: we found something and need your word', missing: [] });
  expect(draft.text).toContain('B Bush, 114.40 USD');
  expect(draft.text).toContain('the work comes to 257.28 USD, 137.28 USD more than you said yes to');
});

test('“ready” and “part is late” in the shop’s own wording; what nobody knows is named', async () => {
  const { revision } = await garage.did('Odile', 'shop.get', {});
  const messages = { ready: '{plate}: {open} of {sum}', found: '', partLate: '{part} on {due}', reminder: '' };
  await garage.did('Odile', 'shop.change', { revision, settings: { messages } });
  const { id } = await order();
  const bush = await job(id, 'Bush', 'part', 10_000);
  await yes(id, bush.id, 12_000);
  const draft = async (about: 'ready' | 'part-late') => garage.did('Desk', 'message.draft', { about, orderId: id });
  await garage.did('Desk', 'payment.take', { orderId: id, kind: 'deposit', way: 'card', amount: 2000 });
  expect(await draft('ready')).toMatchObject({ text: 'OYB 902: 100.00 USD of 120.00 USD', missing: [] });
  expect(await draft('part-late')).toMatchObject({ text: '… on …', missing: ['part', 'due'] });
  await garage.did('Desk', 'awaited.order', {
    ...{ lineId: bush.lineIds[0] ?? '', kind: 'part' as const, supplier: 'Northgate Gears', dueOn: '2026-03-14' },
  });
  expect((await draft('part-late')).text).toMatch(/^Bush on 14\s2?.*Mar/u);
  expect(await garage.refused('Desk', 'message.draft', { about: 'ready' })).toMatchObject({ code: 'bad-input' });
});

test('the log of an order and of its customer: what was said, tried and sent, newest first', async () => {
  const { id, customerId } = await order();
  await job(id, 'Look', 'labour', 10_000);
  const quote = await garage.did('Desk', 'quote.issue', { orderId: id });
  await garage.did('Desk', 'paper.sent', { id: quote.paperId, how: 'e-mail' });
  garage.now = at('2026-03-10T09:00');
  await garage.did('Desk', 'decision.tried', { orderId: id, way: 'phone', reached: '555-0177', words: 'no answer' });
  garage.now = at('2026-03-10T10:00');
  const said = { customerId, orderId: id, about: 'other' as const, way: 'phone' as const, reached: true };
  await garage.did('Desk', 'message.record', { ...said, direction: 'in', words: 'Rings: may it be Friday?' });
  const late = { ...said, words: 'x', at: at('2026-03-10T11:00') };
  expect(await garage.refused('Desk', 'message.record', late)).toMatchObject({
    fields: [{ problem: 'in-the-future' }],
  });
  const log = async (of: { orderId?: string; customerId?: string }) =>
    (await garage.did('Desk', 'message.list', of)).rows.map((row) => [row.kind, row.direction, row.words, row.number]);
  const whole = [
    ['message', 'in', 'Rings: may it be Friday?', 1187],
    ['try', 'out', '555-0177: no answer', 1187],
    ['paper', 'out', '300', 1187],
  ];
  expect(await log({ orderId: id })).toEqual(whole);
  expect(await log({ customerId })).toEqual(whole);
  const other = await order();
  expect(await log({ orderId: other.id })).toEqual([]);
  expect(await garage.refused('Desk', 'message.list', {})).toMatchObject({ code: 'bad-input' });
  expect(await garage.refused('Runa', 'message.list', { orderId: id })).toMatchObject({ code: 'not-allowed' });
});

// Common practice, no source: 4.50 h sold, 3 h 10 clocked at 11:15, done at 12:35, the promise was 12:30.
test('Today tells at 11:15, not at 12:31, that a promise will not be kept', async () => {
  garage.now = at('2026-03-10T08:00');
  const { id } = await order();
  const swap = await garage.did('Desk', 'job.add', {
    ...{ orderId: id, job: { title: 'Swap' } },
    lines: [{ kind: 'labour', words: 'Swap', quantity: 4500, unitPrice: 9600 }],
  });
  await garage.did('Desk', 'order.change', { id, revision: 1, change: { promiseAt: at('2026-03-10T12:30') } });
  const row = async () => (await garage.did('Desk', 'today.get', {})).rows[0];
  expect((await row())?.expected).toBe(null);
  await yes(id, swap.id, 90_000);
  garage.now = at('2026-03-10T08:05');
  await garage.did('Runa', 'clock.on', { jobId: swap.id });
  expect((await row())?.expected).toEqual({ doneAt: at('2026-03-10T12:35'), leftMinutes: 270, people: 1, late: true });
  garage.now = at('2026-03-10T11:15');
  expect(await row()).toMatchObject({
    expected: { doneAt: at('2026-03-10T12:35'), leftMinutes: 80, people: 1, late: true },
    next: { promise: 'soon' },
  });
  await garage.did('Desk', 'order.change', { id, revision: 2, change: { promiseAt: at('2026-03-10T12:35') } });
  expect((await row())?.expected?.late).toBe(false);
  // A second pair of hands: the 80 man-minutes are done in 40.
  await garage.did('Piet', 'clock.on', { jobId: swap.id });
  const two = { doneAt: at('2026-03-10T11:55'), leftMinutes: 80, people: 2, late: false };
  expect((await row())?.expected).toEqual(two);
});

test('Today tells of clocks left running, papers to send and calls to make; of the latter nothing to a mechanic', async () => {
  const { id, carId } = await order();
  const look = await job(id, 'Look', 'labour', 10_000);
  await yes(id, look.id, 90_000);
  await garage.did('Desk', 'quote.issue', { orderId: id });
  await garage.did('Desk', 'reminder.add', { carId, words: 'Wipers', dueOn: '2026-03-10' });
  await garage.did('Runa', 'clock.on', { jobId: look.id });
  const today = (as: string) => garage.did(as, 'today.get', {});
  expect(await today('Desk')).toMatchObject({ open: [{ left: false }], waiting: { toSend: 1, reminders: 1 } });
  garage.now = at('2026-03-10T17:31');
  expect(await today('Desk')).toMatchObject({ open: [{ person: 'Runa', left: true }] });
  garage.now = at('2026-03-11T09:00');
  expect(await today('Runa')).toMatchObject({ open: [{ left: true }], waiting: { toSend: 0, reminders: 0 } });
});

test('a core that was invoiced and did not come back in time is told until it is credited', async () => {
  const { id } = await order();
  const swap = await garage.did('Desk', 'job.add', {
    ...{ orderId: id, job: { title: 'Swap' } },
    lines: [{ kind: 'core', words: 'Core charge', quantity: 1000, unitPrice: 35_000 }],
  });
  await yes(id, swap.id, 90_000);
  const invoice = await garage.did('Odile', 'invoice.issue', { orderId: id });
  const cores = async () => (await garage.did('Desk', 'today.get', {})).waiting.cores;
  garage.now = at('2026-04-09T08:00');
  expect(await cores()).toEqual([]);
  garage.now = at('2026-04-10T08:00');
  expect(await cores()).toMatchObject([{ words: 'Core charge', number: 1187, dueOn: '2026-04-09' }]);
  await garage.did('Desk', 'creditNote.issue', {
    ...{ invoicePaperId: invoice.paperId, reason: 'Core back' },
    lines: [{ lineId: swap.lineIds[0] ?? '', quantity: 1000 }],
  });
  expect(await cores()).toEqual([]);
});

test('a sample that its lab has had for too long is told until the answer is here', async () => {
  const { id } = await order();
  const drawn = { orderId: id, unit: { name: 'Rear differential' }, fluid: 'Gear oil 75W-90' };
  const sample = await garage.did('Runa', 'sample.draw', drawn);
  const sent = await garage.did('Runa', 'sample.send', {
    ...{ id: sample.id, revision: sample.revision, lab: 'Lowmoor Lab', on: '2026-03-10' },
  });
  const lab = async () => (await garage.did('Runa', 'today.get', {})).waiting.lab;
  garage.now = at('2026-03-24T08:00');
  expect(await lab()).toEqual([]);
  garage.now = at('2026-03-25T08:00');
  expect(await lab()).toMatchObject([{ sampleId: sample.id, lab: 'Lowmoor Lab', sentOn: '2026-03-10', number: 1187 }]);
  const metals = [{ element: 'Fe', ppm: 180_000 }];
  await garage.did('Runa', 'sample.result', {
    id: sample.id,
    revision: sent.revision,
    on: '2026-03-25',
    result: { metals },
  });
  expect(await lab()).toEqual([]);
});

test('what was found and told by a message makes it the customer’s move, as a call does', async () => {
  const { id, customerId } = await order();
  await job(id, 'Look', 'labour', 10_000);
  await garage.did('Desk', 'quote.issue', { orderId: id });
  const next = async () => (await garage.did('Desk', 'order.get', { id })).next;
  expect(await next()).toMatchObject({ whose: 'ours', what: 'send-quote' });
  garage.now = at('2026-03-10T09:00');
  const told = { customerId, orderId: id, about: 'found' as const, way: 'message' as const, reached: true };
  await garage.did('Desk', 'message.record', { ...told, direction: 'in', words: 'Any news?' });
  expect((await next()).whose).toBe('ours');
  await garage.did('Desk', 'message.record', { ...told, words: 'We found something.' });
  expect(await next()).toMatchObject({ whose: 'customer', what: 'say-yes', since: garage.now });
});
