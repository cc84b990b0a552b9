import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { InputOf, OutputOf } from '../../core/contract/index.ts';
import { PASSED } from '../../core/order/stops.ts';
import type { PaperDocument } from '../../core/paper/document.ts';
import { openConnection } from '../../db/file/connection.ts';
import { type PracticeShop, practiceShop } from '../db/practice-shop.ts';
import { readPages, textOf } from '../paper/read-back.ts';
import { bookIn, ITEMISED, yes } from './played-shop.ts';

/** What stands before an invoice, and who may let it pass. One job with a yes; each test puts one thing in the way. */
let garage: PracticeShop;
let orderId: string;
let job: OutputOf<'job.add'>;

async function open(settings: Parameters<typeof practiceShop>[0] = {}): Promise<void> {
  garage = await practiceShop({ supplies: ITEMISED, ...settings });
  orderId = (await bookIn(garage)).id;
  job = await garage.did('Desk', 'job.add', {
    orderId,
    job: { title: 'Brakes' },
    lines: [
      { kind: 'labour', words: 'Work', quantity: 1000, unitPrice: 9_600 },
      { kind: 'outside', words: 'Disc skimming', quantity: 1000, unitPrice: 4_000, unitCost: 3_000 },
    ],
  });
  await yes(garage, orderId, [job.id], 16_320);
}
beforeEach(() => open());
afterEach(() => garage.end());

const REASON = 'The dash is out for repair';
const order = () => garage.did('Desk', 'order.get', { id: orderId });
const change = async (fields: InputOf<'order.change'>['change']) =>
  garage.did('Desk', 'order.change', { id: orderId, revision: (await order()).revision, change: fields });
const mileageOut = async () =>
  garage.did('Desk', 'order.mileageOut', { id: orderId, revision: (await order()).revision, mileage: 42_190 });
const pass = (...whats: string[]) => ({
  orderId,
  overrides: whats.map((what) => ({ what, reason: REASON })),
});
/** What the invoice says was let pass, as it is stored; the printed page is looked at for its heading and its words. */
async function printed(paperId: string): Promise<PaperDocument & { readonly kind: 'invoice' }> {
  const { base64 } = await garage.did('Desk', 'paper.read', { id: paperId });
  const text = (await readPages(new Uint8Array(Buffer.from(base64, 'base64')))).map(textOf).join(' ');
  expect(text).toMatch(/Let pass|Zugelassen/);
  // What the program calls it among itself is not for the customer's paper.
  for (const what of PASSED) expect(text).not.toContain(what);
  const raw = openConnection(join(garage.folder, 'shop.sqlite'), { readonly: true });
  const stored = raw.prepare('SELECT document FROM paper WHERE id = ?').pluck().get(paperId) as string;
  raw.close();
  return JSON.parse(stored) as PaperDocument & { readonly kind: 'invoice' };
}
/** The starting job with torque and a second person who signs, put on the sheet and said yes to. */
async function fromBook() {
  const { rows } = await garage.did('Desk', 'jobBook.list', {});
  const added = await garage.did('Desk', 'job.fromBook', { orderId, bookJobId: rows[0]?.id ?? '' });
  const found = (await order()).jobs.find(({ id }) => id === added.id);
  const outside = found?.lines.find(({ kind }) => kind === 'outside');
  if (outside !== undefined) await garage.did('Desk', 'line.takeOut', { id: outside.id, revision: outside.revision });
  const { sums } = await order();
  await yes(garage, orderId, [added.id], sums?.gross ?? 0);
  return added;
}

describe('never let pass, not by the owner either', () => {
  const NEVER: readonly (readonly [what: string, put: () => Promise<unknown>])[] = [
    ['clock-open', () => garage.did('Runa', 'clock.on', { jobId: job.id })],
    [
      'clock-forgotten',
      async () => {
        await garage.did('Runa', 'clock.on', { jobId: job.id });
        await garage.did('Odile', 'clock.forgotten', { personId: garage.people.get('Runa') ?? '' });
      },
    ],
    ['job-without-yes', () => garage.did('Desk', 'job.add', { orderId, job: { title: 'Wipers' }, lines: [] })],
    [
      'over-the-yes',
      () => garage.did('Desk', 'line.change', { id: job.lineIds[0] ?? '', revision: 1, change: { unitPrice: 9_601 } }),
    ],
    ['over-own-maximum', () => change({ ownMaximum: 16_319 })],
    [
      'po-missing',
      async () => {
        const payer = await garage.did('Desk', 'customer.add', { name: 'Harbour Fleet', poRequired: true });
        await change({ payerId: payer.id });
      },
    ],
    [
      'part-on-no-line',
      async () => {
        const part = { number: 'CW-1', words: 'Pad', unit: '', price: 500, cost: 300, onHand: 1000 };
        const { id: partId } = await garage.did('Desk', 'part.add', part);
        await garage.did('Runa', 'part.issue', { jobId: job.id, lineId: null, partId, quantity: 1000 });
      },
    ],
  ];

  test.each(NEVER)('%s', async (what, put) => {
    await mileageOut();
    expect((await order()).stops).toEqual([]);
    await put();
    expect((await order()).stops).toMatchObject([{ what, override: 'never' }]);
    for (const who of ['Desk', 'Odile'])
      expect(await garage.refused(who, 'invoice.issue', pass(what))).toMatchObject({
        code: 'held',
        reasons: [{ what }],
      });
    expect((await order()).papers).toEqual([]);
  });
});

describe('let pass by the owner, with a reason that is printed', () => {
  const OWNER: readonly (readonly [what: string, put: () => Promise<unknown>, said: RegExp])[] = [
    ['mileage-out-missing', async () => {}, /mileage on leaving/i],
    [
      'outside-bill-missing',
      async () => {
        await mileageOut();
        await garage.did('Desk', 'line.change', { id: job.lineIds[1] ?? '', revision: 1, change: { unitCost: null } });
      },
      /bill.*Disc skimming/i,
    ],
    [
      'quarantine',
      async () => {
        await mileageOut();
        await garage.did('Runa', 'quarantine.set', { orderId, what: 'car', words: 'Hub hot after the drive' });
      },
      /not to be released: Hub hot/i,
    ],
    [
      'step-failed',
      async () => {
        await mileageOut();
        const { id: jobId } = await fromBook();
        await garage.did('Runa', 'step.tick', { jobId, n: 2, state: 'failed', why: 'Seized' });
      },
      /failed and not done since.*B, step 2/i,
    ],
    [
      'step-not-needed',
      async () => {
        await mileageOut();
        const { id: jobId } = await fromBook();
        const steps = (await order()).jobs.find(({ id }) => id === jobId)?.steps ?? [];
        for (const { n } of steps)
          await garage.did('Runa', 'step.tick', { jobId, n, state: 'not-needed', why: 'Not taken off' });
      },
      /left out as not needed.*B, step \d/i,
    ],
    [
      'final-check-missing',
      async () => {
        await mileageOut();
        const { rows } = await garage.did('Desk', 'jobBook.list', {});
        const { id, version, content } = await garage.did('Desk', 'jobBook.get', { id: rows[0]?.id ?? '' });
        const list = { title: 'Before it leaves', kind: 'final' as const, items: [{ words: 'Lamps' }] };
        const { id: finalCheckId } = await garage.did('Desk', 'checkList.add', list);
        await garage.did('Desk', 'jobBook.save', { id, basedOn: version, content: { ...content, finalCheckId } });
        await fromBook();
      },
      /final list not gone through.*B/i,
    ],
    [
      'torque-missing',
      async () => {
        await mileageOut();
        await fromBook();
      },
      /torque.*B, step \d+/i,
    ],
  ];

  test.each(OWNER)('%s', async (what, put, said) => {
    await put();
    const { stops } = await order();
    expect(stops.map((stop) => stop.what)).toContain(what);
    expect(stops.every(({ override }) => override === 'owner')).toBe(true);
    const all = pass(...stops.map((stop) => stop.what));
    expect(await garage.refused('Odile', 'invoice.issue', { orderId })).toMatchObject({ code: 'held' });
    expect(await garage.refused('Desk', 'invoice.issue', all)).toMatchObject({ code: 'not-allowed' });
    const { paperId } = await garage.did('Odile', 'invoice.issue', all);
    const { overrides } = await printed(paperId);
    expect(overrides).toHaveLength(stops.length);
    expect(overrides).toContainEqual({ what: expect.stringMatching(said), reason: REASON, by: 'Odile' });
  });

  test('a second signature that is missing', async () => {
    await mileageOut();
    const added = await fromBook();
    const { content } = await garage.did('Desk', 'jobBook.version', {
      versionId: (await order()).jobs.find(({ id }) => id === added.id)?.bookVersionId ?? '',
    });
    const signs = content.steps.filter(({ second }) => second === 'signs' || second === 'does it').map(({ n }) => n);
    const { stops } = await order();
    expect(stops.filter(({ what }) => what === 'second-missing').map((stop) => stop.with.step)).toEqual(signs);
  });

  test('a torque step that failed is not done: it holds as one that is open', async () => {
    await mileageOut();
    const added = await fromBook();
    const torque = (await order()).stops.find(({ what }) => what === 'torque-missing');
    const step = Number(torque?.with.step);
    const tick = { jobId: added.id, n: step, why: 'The thread pulled' };
    await garage.did('Runa', 'step.tick', { ...tick, state: 'failed' });
    expect((await order()).stops).toContainEqual(torque);
    await garage.did('Runa', 'step.tick', { ...tick, state: 'not-needed' });
    expect((await order()).stops).not.toContainEqual(torque);
  });
});

test('the old-parts wish is let pass by anybody, with a note that is kept', async () => {
  await mileageOut();
  await garage.did('Desk', 'decision.record', {
    orderId,
    jobs: [{ jobId: job.id, answer: 'yes' }],
    upTo: { total: 16_320 },
    spoken: { name: 'Ilse Vandermeer', role: 'customer' },
    way: 'person',
    oldParts: 'return',
  });
  expect((await order()).stops).toMatchObject([{ what: 'old-parts-unanswered', override: 'note' }]);
  expect(await garage.refused('Desk', 'invoice.issue', { orderId })).toMatchObject({ code: 'held' });
  const { paperId } = await garage.did('Desk', 'invoice.issue', pass('old-parts-unanswered'));
  expect((await printed(paperId)).overrides).toEqual([
    { what: 'What became of the old parts is not said', reason: REASON, by: 'Desk' },
  ]);
});

test('a German paper says it in German', async () => {
  await garage.end();
  await open({ language: 'de' });
  const { paperId } = await garage.did('Odile', 'invoice.issue', pass('mileage-out-missing'));
  expect((await printed(paperId)).overrides).toMatchObject([{ what: 'Kilometerstand bei der Abgabe fehlt' }]);
});
