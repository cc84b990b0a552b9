import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Host, startHost } from '../../electron/host.ts';
import { sayError } from '../../electron/words.ts';
import { errorSentence } from '../../renderer/words/error-sentence.ts';
import { type PracticeShop, practiceShop } from '../db/practice-shop.ts';

// A whole shop behind the browser host, and bodies such as nobody's window sends.

let garage: PracticeShop;
let host: Host;
let cookie: string;
let ids: { order: string; customer: string; car: string; job: string; part: string };
const faults: unknown[] = [];

beforeAll(async () => {
  garage = await practiceShop();
  const root = mkdtempSync(join(tmpdir(), 'crownwheel-window-'));
  mkdirSync(root, { recursive: true });
  writeFileSync(join(root, 'index.html'), '');
  host = await startHost({ shop: garage.shop, root, onFault: (_id, fault) => faults.push(fault) });
  const entry = await fetch(host.newLink('window'));
  cookie = entry.headers.getSetCookie()[0]?.split(';')[0] ?? '';
  await post('/enter', JSON.stringify({ person: 'Desk', code: 'desk-code' }));
  const {
    id: order,
    customerId: customer,
    carId: car,
  } = await garage.did('Desk', 'order.book', {
    customer: { add: { name: 'Agnes Pell' } },
    car: { add: { plate: 'JJD 311', words: 'Oriel Estate', unit: 'km' } },
    complaint: 'Yearly service',
    here: true,
  });
  const job = (await garage.did('Desk', 'job.add', { orderId: order, job: { title: 'Look' }, lines: [] })).id;
  const part = await garage.did('Desk', 'part.add', {
    number: 'CW-18',
    words: 'Washer',
    unit: '',
    price: 210,
    cost: 90,
    onHand: 0,
  });
  ids = { order, customer, car, job, part: part.id };
});
afterAll(async () => {
  await host.close();
  await garage.end();
});

async function post(path: string, body: string | Buffer): Promise<{ status: number; answer: Record<string, unknown> }> {
  const response = await fetch(`${host.address}${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', cookie },
    body: body as string,
  });
  return { status: response.status, answer: (await response.json()) as Record<string, unknown> };
}

const trail = async () => (await garage.did('Odile', 'trail.list', {})).rows[0]?.n;

/** Sends a body; nothing may be saved by it, nothing may have been unforeseen, and the host still answers after it. */
async function refusedBy(body: string | Buffer): Promise<{ status: number; answer: Record<string, unknown> }> {
  const before = await trail();
  const got = await post('/call', body);
  expect(got.answer.ok).toBe(false);
  expect(await trail()).toBe(before);
  expect(faults).toEqual([]);
  expect((await post('/call', '{"operation":"today.get","input":{}}')).status).toBe(200);
  return got;
}

const line = (change: object) => ({
  jobId: ids.job,
  line: { kind: 'part', words: 'Seal', quantity: 1000, unitPrice: 900, ...change },
});
const take = (amount: unknown) => ({ orderId: ids.order, kind: 'deposit', way: 'cash', amount });
const nameTo = (name: unknown) => ({ id: ids.customer, revision: 1, change: { name } });
const plateTo = (plate: string) => ({ id: ids.car, revision: 1, change: { plate } });

/** Case, operation, input, the field that is named, and the problem. */
const CASES: readonly (readonly [string, string, () => unknown, string, string])[] = [
  ['ten megabytes of text', 'customer.change', () => nameTo('x'.repeat(10_000_000)), 'change.name', 'too-long'],
  ['a plate of emoji', 'car.change', () => plateTo('🚗🚗🚗'), 'change.plate', 'not-a-plate'],
  [
    'a plate of flags',
    'car.plate',
    () => ({ id: ids.car, revision: 1, plate: '🏁 11', from: '2026-03-01' }),
    'plate',
    'not-a-plate',
  ],
  ['half a character', 'customer.change', () => nameTo('Agnes \ud83d Pell'), 'change.name', 'broken-character'],
  ['the other half', 'customer.change', () => nameTo('\ude97'), 'change.name', 'broken-character'],
  ['a NUL', 'customer.change', () => nameTo('Agnes\0Pell'), 'change.name', 'control-character'],
  ['an escape sequence', 'customer.change', () => nameTo('\u001b[2J'), 'change.name', 'control-character'],
  ['nothing but blanks', 'customer.change', () => nameTo(' \u00a0\u2003'), 'change.name', 'missing'],
  ['a list for a name', 'customer.change', () => nameTo(['Agnes']), 'change.name', 'not-text'],
  ['an object for a name', 'customer.change', () => nameTo({ toString: 'Agnes' }), 'change.name', 'not-text'],
  ['letters in money', 'payment.take', () => take('12a'), 'amount', 'not-a-number'],
  ['money as text', 'payment.take', () => take('1200'), 'amount', 'not-a-number'],
  ['half a cent', 'payment.take', () => take(0.5), 'amount', 'not-whole'],
  ['more than can be counted', 'payment.take', () => take(2 ** 53 + 2), 'amount', 'too-much'],
  ['1e21', 'payment.take', () => take(1e21), 'amount', 'too-much'],
  ['money below zero', 'payment.take', () => take(-500), 'amount', 'too-little'],
  ['nothing for money', 'payment.take', () => take(null), 'amount', 'not-a-number'],
  ['a quantity below zero', 'line.add', () => line({ quantity: -1000 }), 'line.quantity', 'too-little'],
  ['a quantity beyond reason', 'line.add', () => line({ quantity: 1e15 }), 'line.quantity', 'too-much'],
  ['a kind that is none', 'line.add', () => line({ kind: 'sublet' }), 'line.kind', 'not-one-of-these'],
  [
    'a day in 1899',
    'car.odometer',
    () => ({ id: ids.car, reading: 1, on: '1899-12-31', event: 'read' }),
    'on',
    'out-of-range',
  ],
  [
    'a day that is not',
    'car.odometer',
    () => ({ id: ids.car, reading: 1, on: '2026-02-30', event: 'read' }),
    'on',
    'wrong-form',
  ],
  [
    'a mileage below zero',
    'car.odometer',
    () => ({ id: ids.car, reading: -1, on: '2026-02-28', event: 'read' }),
    'reading',
    'too-little',
  ],
  [
    'a field that nobody asked for',
    'part.receive',
    () => ({ partId: ids.part, quantity: 1000, cost: 90, onHand: 5 }),
    'onHand',
    'unknown-field',
  ],
  ['a number as input', 'part.receive', () => 7, '', 'not-fields'],
];

describe('what does not fit is named by its field, with a sentence at each door, and nothing is saved', () => {
  test.each(CASES)('%s', async (_name, operation, input, path, problem) => {
    const { status, answer } = await refusedBy(JSON.stringify({ operation, input: input() }));
    expect([status, answer]).toMatchObject([200, { error: { code: 'bad-input', fields: [{ path, problem }] } }]);
    const error = answer.error as Parameters<typeof sayError>[0];
    expect(sayError(error)).toContain('That input does not fit: ');
    expect(sayError(error)).not.toMatch(/[{}]|undefined/);
    expect(errorSentence(error)).not.toMatch(/[{}]|undefined/);
  });

  test('a name as long and as foreign as it may be is taken as it is', async () => {
    const name = `Þóra Łukasiewicz-Ñandú ${'名'.repeat(60)} 🚗`;
    const { answer } = await post('/call', JSON.stringify({ operation: 'customer.change', input: nameTo(name) }));
    expect(answer).toMatchObject({ ok: true });
    expect(await garage.did('Desk', 'customer.get', { id: ids.customer })).toMatchObject({ fields: { name } });
  });
});

/** Case, body, status. */
const BODIES: readonly (readonly [string, () => string | Buffer, number])[] = [
  ['no input', () => '{"operation":"today.get"}', 400],
  [
    'lists in lists, a million deep',
    () => `{"operation":"today.get","input":${'['.repeat(1_000_000)}${']'.repeat(1_000_000)}}`,
    200,
  ],
  [
    'objects in objects, a million deep',
    () => `{"operation":"today.get","input":${'{"a":'.repeat(1_000_000)}1${'}'.repeat(1_000_000)}}`,
    200,
  ],
  ['lists that never end', () => '['.repeat(5_000_000), 400],
  ['a foreign prototype in the body', () => '{"operation":"today.get","input":{},"__proto__":{"personId":"x"}}', 400],
  [
    'a foreign prototype in the input',
    () => '{"operation":"customer.add","input":{"name":"A","__proto__":{"phone":"1"}}}',
    200,
  ],
  [
    'a constructor in the input',
    () => '{"operation":"customer.add","input":{"name":"A","constructor":{"prototype":{"x":1}}}}',
    200,
  ],
  ['an operation of the prototype', () => '{"operation":"__proto__","input":{}}', 200],
  ['an operation that all objects have', () => '{"operation":"constructor","input":{}}', 200],
  ['an operation without end', () => JSON.stringify({ operation: 'x'.repeat(1_000_000), input: {} }), 400],
  ['an instant that is no number', () => '{"operation":"customer.add","input":{"name":"A"},"at":"now"}', 400],
  ['an instant that has no end', () => '{"operation":"customer.add","input":{"name":"A"},"at":1e400}', 400],
  ['an instant between two', () => '{"operation":"customer.add","input":{"name":"A"},"at":1772352000000.5}', 200],
  ['an instant in 1899', () => '{"operation":"customer.add","input":{"name":"A"},"at":-2208988800001}', 200],
  [
    'a request id without end',
    () => JSON.stringify({ operation: 'customer.add', input: { name: 'A' }, request: 'x'.repeat(65) }),
    400,
  ],
  ['numbers that are none', () => '{"operation":"today.get","input":NaN}', 400],
  ['a key twice, with the second foreign', () => '{"operation":"today.get","operation":7,"input":{}}', 400],
  ['a byte order mark alone', () => Buffer.from([0xef, 0xbb, 0xbf]), 400],
];

describe('a body that is no call is turned away at the door', () => {
  test.each(BODIES)('%s', async (_name, body, status) => {
    expect((await refusedBy(body())).status).toBe(status);
    expect(({} as { personId?: string; phone?: string }).personId).toBeUndefined();
  });
});

test('a thousand bad bodies at once leave the host up', async () => {
  const before = await trail();
  const answers = await Promise.all(
    Array.from({ length: 1_000 }, (_, n) =>
      post('/call', JSON.stringify({ operation: 'payment.take', input: take(`${n}a`) })).then(({ status }) => status),
    ),
  );
  expect(new Set(answers)).toEqual(new Set([200]));
  expect(await trail()).toBe(before);
  expect((await garage.did('Odile', 'care.verify', {})).sound).toBe(true);
});
