import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { at, type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
beforeEach(async () => {
  garage = await practiceShop({ retentionYears: { years: 7, source: 'invented', checkedOn: null } });
});
afterEach(async () => {
  await garage.end();
});

const SECRET = { note: 'Quarrels about the bill', phone: '555-0177', words: 'His wife says he is abroad' };

const visit = () =>
  garage.did('Desk', 'order.book', {
    customer: { add: { name: 'Per Halloran', phone: SECRET.phone, note: SECRET.note } },
    car: { add: { plate: 'OYB 902', words: 'Oriel Estate', unit: 'km' } },
    ...{ complaint: 'It whines.', mileage: 61_000, here: true },
  });
/** Worked, invoiced, paid and gone. */
async function settled() {
  const booked = await visit();
  const orderId = booked.id;
  const job = await garage.did('Desk', 'job.add', {
    ...{ orderId, job: { title: 'Look' } },
    lines: [{ kind: 'labour', words: 'Look', quantity: 1000, unitPrice: 10_000 }],
  });
  await garage.did('Desk', 'decision.record', {
    ...{ orderId, jobs: [{ jobId: job.id, answer: 'yes' }], upTo: { total: 50_000 }, way: 'person' },
    spoken: { name: 'Per Halloran', role: 'customer' },
  });
  await garage.did('Desk', 'message.record', {
    ...{ customerId: booked.customerId, orderId, about: 'other', way: 'phone', reached: true, words: SECRET.words },
  });
  const { revision } = await garage.did('Desk', 'order.get', { id: orderId });
  await garage.did('Desk', 'order.mileageOut', { id: orderId, revision, mileage: 61_001 });
  const invoice = await garage.did('Odile', 'invoice.issue', {
    ...{ orderId, overrides: [{ what: 'old-parts-unanswered', reason: 'None' }] },
  });
  await garage.did('Desk', 'payment.take', { orderId, kind: 'payment', way: 'card', amount: invoice.toPay });
  const order = await garage.did('Desk', 'order.get', { id: orderId });
  await garage.did('Desk', 'order.handOver', { id: orderId, revision: order.revision, to: 'Per Halloran' });
  // The old phone stands in the trail as what it was before.
  const { revision: now } = await garage.did('Desk', 'customer.get', { id: booked.customerId });
  await garage.did('Desk', 'customer.change', {
    ...{ id: booked.customerId, revision: now, change: { phone: '555-0199', note: `${SECRET.note}!` } },
  });
  return booked;
}
const verified = () => garage.did('Odile', 'care.verify', {});
/** Every table that a text stands in, in whatever column. */
function tablesWith(text: string): string[] {
  const raw = new Database(join(garage.folder, 'shop.sqlite'), { readonly: true });
  try {
    const tables = raw.prepare(`SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'find_%'`).all();
    return (tables as { name: string }[])
      .map(({ name }) => name)
      .filter((name) => JSON.stringify(raw.prepare(`SELECT * FROM ${name}`).all()).includes(text));
  } finally {
    raw.close();
  }
}

test('what may go is listed, goes from the rows and from the trail, and the books still agree', async () => {
  const { customerId } = await settled();
  expect(tablesWith(SECRET.note)).toEqual(['customer', 'trail']);
  const { revision, goes, stays } = await garage.did('Desk', 'privacy.look', { customerId });
  const keys = goes.map((one) => one.what);
  expect(keys).toEqual(['note', 'told', 'habits', 'reminders', 'contact'].filter((key) => keys.includes(key as never)));
  expect(stays.find((one) => one.what === 'name')).toMatchObject({ why: 'years', until: '2033-12-31' });
  const takeOut = { customerId, revision, goes: keys };
  expect(await garage.refused('Desk', 'privacy.takeOut', takeOut)).toMatchObject({ code: 'not-allowed' });
  const done = await garage.did('Odile', 'privacy.takeOut', takeOut);
  expect(done.trailRows).toBe(1);
  for (const text of [SECRET.note, SECRET.words, '555-0199']) expect([text, tablesWith(text)]).toEqual([text, []]);
  expect(tablesWith(SECRET.phone)).toEqual([]);
  expect((await garage.did('Desk', 'customer.get', { id: customerId })).fields).toMatchObject({
    ...{
      name: 'Per Halloran',
      phone: '',
      note: '',
      consents: keys.includes('reminders') ? { reminders: false } : null,
    },
  });
  expect(tablesWith('Per Halloran')).toContain('paper');
  expect((await garage.did('Desk', 'customer.answers', { id: customerId })).tries).toEqual([]);
  expect(await verified()).toMatchObject({ sound: true, checked: { trail_taken_out: 1 } });
  const again = await garage.did('Desk', 'privacy.look', { customerId });
  expect(again.goes).toEqual([]);
});

test('a row of the trail that somebody else empties is found, and one emptied twice by the program is not', async () => {
  const { customerId } = await settled();
  const look = await garage.did('Desk', 'privacy.look', { customerId });
  const note = await garage.did('Odile', 'privacy.takeOut', { customerId, revision: look.revision, goes: ['note'] });
  await garage.did('Odile', 'privacy.takeOut', { customerId, revision: note.revision, goes: ['contact'] });
  expect(await verified()).toMatchObject({ sound: true });
  const raw = new Database(join(garage.folder, 'shop.sqlite'));
  expect(() => raw.exec(`UPDATE trail SET hash = 'x' WHERE n = 3`)).toThrow('trail is append-only');
  raw.exec(`UPDATE trail SET changes = replace(changes, '"was"', '"wss"') WHERE changes LIKE '%"was"%'`);
  raw.close();
  const { sound, faults } = await verified();
  expect([sound, faults.some((fault) => fault.what === 'trail-broken')]).toEqual([false, true]);
});

test('while an order or a sum is open, ways to reach them stay; what is not on the list is refused', async () => {
  const { customerId } = await visit();
  const { revision, goes, stays } = await garage.did('Desk', 'privacy.look', { customerId });
  expect(goes.map((one) => one.what)).not.toContain('contact');
  expect(stays).toContainEqual({ what: 'contact', why: 'open', n: 1, until: null });
  const ask = { customerId, revision, goes: ['note', 'contact'] };
  expect(await garage.refused('Odile', 'privacy.takeOut', ask)).toMatchObject({
    reasons: [{ what: 'must-stay', with: { what: 'contact' } }],
  });
  expect((await garage.did('Desk', 'customer.get', { id: customerId })).fields.note).toBe(SECRET.note);
});

test('a request has its last day and stands on Today until it is answered', async () => {
  const { customerId } = await visit();
  const asked = { customerId, askedOn: '2026-03-09', way: 'message' as const, words: 'What do you keep of me?' };
  const { id, revision, answerBy } = await garage.did('Desk', 'privacy.ask', asked);
  expect(answerBy).toBe('2026-04-08');
  const waiting = async () => (await garage.did('Desk', 'today.get', {})).waiting.privacy;
  expect(await waiting()).toMatchObject([{ customerId, customer: 'Per Halloran', answerBy, late: false }]);
  garage.now = at('2026-04-09T08:00');
  expect(await waiting()).toMatchObject([{ late: true }]);
  await garage.did('Desk', 'privacy.answer', { id, revision, answer: 'copy' });
  expect(await waiting()).toEqual([]);
  expect(await garage.refused('Desk', 'privacy.answer', { id, revision: 2, answer: 'copy' })).toMatchObject({
    fields: [{ problem: 'closed-already' }],
  });
  const late = { ...asked, askedOn: '2026-04-10' };
  expect(await garage.refused('Desk', 'privacy.ask', late)).toMatchObject({ fields: [{ problem: 'in-the-future' }] });
});

test('the copy holds every word that is kept of them, to read and as data', async () => {
  const { customerId } = await settled();
  const { name, text, json } = await garage.did('Desk', 'privacy.copy', { customerId });
  expect(name).toBe('Per Halloran 2026-03-10');
  for (const words of ['555-0199', `${SECRET.note}!`, SECRET.words, 'It whines.', 'OYB 902', '1045']) {
    expect(text).toContain(words);
    expect(json).toContain(words);
  }
  expect(Object.keys(JSON.parse(json))).toContain('yes and no');
});
