import { afterEach, expect, test } from 'vitest';
import { paperWords } from '../../core/paper/words.ts';
import { readPages, textOf } from '../paper/read-back.ts';
import { BenchJob } from './bench-job.ts';
import { type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop | null = null;
afterEach(async () => {
  await garage?.end();
  garage = null;
});

const spoken = { name: 'Ilse Vandermeer', role: 'customer' as const };

/** What an outside reader finds on a paper. */
async function paperText(shop: PracticeShop, id: string): Promise<string> {
  const { base64 } = await shop.did('Odile', 'paper.read', { id });
  const pages = await readPages(new Uint8Array(Buffer.from(base64, 'base64')));
  return pages.map(textOf).join(' ').replace(/\s+/g, ' ');
}

/** A car that is here, of a customer as told. */
async function visit(shop: PracticeShop, customer: object = {}, payerId: string | null = null) {
  const order = await shop.did('Desk', 'order.book', {
    customer: { add: { name: 'Ilse Vandermeer', ...customer } },
    car: { add: { plate: 'KVR 221', words: 'Corvane R', unit: 'km' } },
    ...{ complaint: 'It whines.', here: true, payerId },
  });
  return order.id;
}

async function yesAndInvoice(shop: PracticeShop, orderId: string, jobIds: readonly string[]) {
  const jobs = jobIds.map((jobId) => ({ jobId, answer: 'yes' as const }));
  const upTo = { total: 900_000 };
  await shop.did('Desk', 'decision.record', { orderId, jobs, upTo, spoken, way: 'person' });
  return shop.did('Odile', 'invoice.issue', { orderId });
}

test('a line with a discount of its own says so, since quantity and price do not make its amount', async () => {
  garage = await practiceShop();
  const orderId = await visit(garage);
  const part = { kind: 'part' as const, words: 'Seal', quantity: 2000, unitPrice: 6250, discount: { bp: 2000 } };
  const { id } = await garage.did('Desk', 'job.add', { orderId, job: { title: 'Seals' }, lines: [part] });
  const { paperId } = await yesAndInvoice(garage, orderId, [id]);
  expect(await paperText(garage, paperId)).toContain('after a discount of 25.00');
  // Given away, there is no price that a discount could be off.
  const other = await visit(garage);
  const free = await garage.did('Desk', 'job.add', { orderId: other, job: { title: 'Seals' }, lines: [part] });
  await garage.did('Desk', 'line.give', { id: free.lineIds[0] ?? '', revision: 1, given: true });
  const { paperId: given } = await garage.did('Desk', 'quote.issue', { orderId: other });
  expect(await paperText(garage, given)).not.toContain('after a discount');
});

test('a job that is offered under the sum of a quote stands there with its hours and what each line comes to', async () => {
  garage = await practiceShop({ supplies: { mode: 'itemise' } });
  const orderId = await visit(garage);
  const book = { quantity: 0, unitPrice: 9600, billing: 'book' as const, book: 1500 };
  await garage.did('Desk', 'job.add', {
    ...{ orderId, job: { title: 'Wipers' } },
    lines: [{ kind: 'part', words: 'Blade', quantity: 1000, unitPrice: 2000 }],
  });
  const { id } = await garage.did('Desk', 'job.add', {
    ...{ orderId, job: { title: 'Bushes', offered: true } },
    lines: [
      { kind: 'labour', words: 'Fit', unit: 'h', ...book },
      { kind: 'part', words: 'Bush', quantity: 3000, unitPrice: 1110, discount: { sum: 30 } },
    ],
  });
  const { paperId } = await garage.did('Desk', 'quote.issue', { orderId });
  const text = await paperText(garage, paperId);
  for (const said of ['1.5 h', '144.00', '33.00', '177.00']) expect(text).toContain(said);
  const { jobs } = await garage.did('Desk', 'order.get', { id: orderId });
  expect(jobs.find((job) => job.id === id)?.lines.map(({ amount }) => amount)).toEqual([14_400, 3_300]);
});

test('an invoice says what is due next: after its jobs, and the wheels where the card was handed out', async () => {
  const bench = await BenchJob.begun([{ do: 'Wheels on', recheckCard: true }], {
    after: [{ source: 'run-in', words: 'Run-in oil', days: null, distance: 800 }],
  });
  garage = bench.garage;
  await bench.tick(1);
  const { revision } = await bench.order();
  await garage.did('Runa', 'order.mileageOut', { id: bench.orderId, revision, mileage: 42_196 });
  const { paperId } = await garage.did('Odile', 'invoice.issue', { orderId: bench.orderId });
  const text = await paperText(garage, paperId);
  expect(text).toContain('Next due. Run-in oil: at 42,996 km');
  // 80 km on, where the shop has said nothing else.
  expect(text).toContain('or at 42,276 km');
});

test('papers speak the language of whoever they are made out to', async () => {
  garage = await practiceShop();
  const german = { language: 'de' as const, phone: '555-0190' };
  const orderId = await visit(garage, german);
  const part = { kind: 'part' as const, words: 'Seal', quantity: 1000, unitPrice: 6250 };
  const { id } = await garage.did('Desk', 'job.add', { orderId, job: { title: 'Seals' }, lines: [part] });
  const { title } = paperWords('de');
  const { paperId: quote } = await garage.did('Desk', 'quote.issue', { orderId });
  expect(await paperText(garage, quote)).toContain(title.quote);
  const { paperId } = await yesAndInvoice(garage, orderId, [id]);
  expect(await paperText(garage, paperId)).toContain(title.invoice);
  const taken = await garage.did('Desk', 'payment.take', { orderId, kind: 'payment', way: 'card', amount: 100 });
  expect(await paperText(garage, taken.receiptPaperId)).toContain(title.receipt);
  // Somebody else pays, in the language of the shop.
  const payer = await garage.did('Desk', 'customer.add', { name: 'Tollgate Fleet' });
  const other = await visit(garage, german, payer.id);
  await garage.did('Desk', 'job.add', { orderId: other, job: { title: 'Seals' }, lines: [part] });
  const { paperId: theirs } = await garage.did('Desk', 'quote.issue', { orderId: other });
  expect(await paperText(garage, theirs)).toContain(paperWords('en').title.quote);
});

test('a credit note bears tax as its invoice does, whoever drives the car', async () => {
  garage = await practiceShop();
  const payer = await garage.did('Desk', 'customer.add', { name: 'Tollgate Fleet' });
  const orderId = await visit(garage, { taxExempt: 'certificate 12' }, payer.id);
  const part = { kind: 'part' as const, words: 'Seal', quantity: 1000, unitPrice: 6250 };
  const { id, lineIds } = await garage.did('Desk', 'job.add', { orderId, job: { title: 'Seals' }, lines: [part] });
  const { paperId, gross } = await yesAndInvoice(garage, orderId, [id]);
  expect(gross).toBe(7500);
  const credit = await garage.did('Desk', 'creditNote.issue', {
    ...{ invoicePaperId: paperId, reason: 'Not fitted', lines: [{ lineId: lineIds[0] ?? '', quantity: 1000 }] },
  });
  expect(credit.gross).toBe(7500);
  expect(await paperText(garage, credit.paperId)).not.toContain('certificate 12');
});

test('outside work is a guess on the invoice until its bill is here', async () => {
  garage = await practiceShop();
  const printed: boolean[] = [];
  for (const bill of [null, 2800]) {
    const orderId = await visit(garage);
    const lab = { kind: 'outside' as const, words: 'Fennick Fluid Lab', quantity: 1000, unitPrice: 4200 };
    const { id, lineIds } = await garage.did('Desk', 'job.add', { orderId, job: { title: 'Lab' }, lines: [lab] });
    const jobs = [{ jobId: id, answer: 'yes' as const }];
    await garage.did('Desk', 'decision.record', { orderId, jobs, upTo: { total: 9000 }, spoken, way: 'person' });
    const asked = { lineId: lineIds[0] ?? '', kind: 'outside' as const, supplier: 'Fennick', dueOn: null };
    const awaited = await garage.did('Desk', 'awaited.order', asked);
    if (bill !== null) await garage.did('Desk', 'awaited.arrive', { id: awaited.id, cost: bill });
    const overrides = bill === null ? [{ what: 'outside-bill-missing', reason: 'It comes by post' }] : [];
    const { paperId } = await garage.did('Odile', 'invoice.issue', { orderId, overrides });
    printed.push((await paperText(garage, paperId)).includes(paperWords('en').estimated));
  }
  expect(printed).toEqual([true, false]);
});

test('the labour of a job from the book is called as the papers of the shop call it', async () => {
  garage = await practiceShop({ language: 'de' });
  const orderId = await visit(garage);
  const [book] = (await garage.did('Desk', 'jobBook.list', {})).rows;
  await garage.did('Desk', 'job.fromBook', { orderId, bookJobId: book?.id ?? '' });
  const { jobs } = await garage.did('Desk', 'order.get', { id: orderId });
  expect(jobs[0]?.lines[0]).toMatchObject({ kind: 'labour', words: 'Arbeit' });
});
