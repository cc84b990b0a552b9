import { afterAll, beforeAll, expect, test } from 'vitest';
import { newId } from '../../db/id.ts';
import { type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
let orderId = '';

beforeAll(async () => {
  garage = await practiceShop();
  const order = await garage.did('Desk', 'order.book', {
    customer: { add: { name: 'Per Halloran' } },
    car: { add: { plate: 'OYB 902', words: 'Oriel Estate', unit: 'km' } },
    ...{ complaint: 'Rattles.', here: true },
  });
  orderId = order.id;
});
afterAll(() => garage.end());

// An invented limit.
const measured = { what: 'play', value: 1200, unit: 'mm', least: null, most: 500, source: 'our own figure' };

test('a finding says where, which part, what was measured and what would mend it, and becomes a job in one step', async () => {
  const { rows } = await garage.did('Desk', 'jobBook.list', {});
  const bookJobId = rows[0]?.id ?? '';
  const mend = { words: 'Both links', bookJobId };
  const fields = { text: 'Drop link loose', urgency: 'soon' as const, place: 'rear left', part: 'drop link' };
  const { id } = await garage.did('Runa', 'finding.add', { orderId, ...fields, measured, mend });
  const { findings } = await garage.did('Runa', 'order.get', { id: orderId });
  expect(findings).toMatchObject([{ id, ...fields, measured, mend, jobId: null, by: 'Runa' }]);
  const job = await garage.did('Desk', 'job.fromBook', { orderId, bookJobId, findingId: id });
  const after = await garage.did('Desk', 'order.get', { id: orderId });
  expect(after.findings).toMatchObject([{ id, jobId: job.id, revision: 2 }]);
});

test('a change leaves alone what it does not name, and a stale one is answered with both', async () => {
  const { id } = await garage.did('Runa', 'finding.add', { orderId, text: 'Boot cracked', place: 'front', measured });
  await garage.did('Desk', 'finding.change', { id, revision: 1, urgency: 'unsafe' });
  const { findings } = await garage.did('Desk', 'order.get', { id: orderId });
  expect(findings.at(-1)).toMatchObject({ text: 'Boot cracked', urgency: 'unsafe', place: 'front', measured });
  expect(await garage.refused('Desk', 'finding.change', { id, revision: 1, measured: null })).toMatchObject({
    ...{ code: 'changed-meanwhile', revision: 2, now: { urgency: 'unsafe', measured } },
  });
});

test('an id made at the tablet is kept, once', async () => {
  const id = newId();
  expect(await garage.did('Runa', 'finding.add', { orderId, id, text: 'Seal weeps' })).toEqual({ id, revision: 1 });
  expect(await garage.refused('Runa', 'finding.add', { orderId, id, text: 'Seal weeps' })).toMatchObject({
    fields: [{ path: 'id', problem: 'already-here' }],
  });
  expect(await garage.refused('Runa', 'finding.add', { orderId, id: 'mine', text: 'x' })).toMatchObject({
    ...{ code: 'bad-input', fields: [{ path: 'id' }] },
  });
});
