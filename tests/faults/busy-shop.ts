/**
 * A child that works on a shop until it is killed: every kind of `do` of a visit, over and over. Each answer that came
 * back is written to standard output as one line `request answer`, before the next call is made.
 */
import { writeSync } from 'node:fs';
import { newId } from '../../db/id.ts';
import { openShop } from '../../db/shop.ts';

const [, , folder = '', owner = '', mechanic = '', bay = ''] = process.argv;
const shop = await openShop({ folder });
type Out = Record<string, unknown> & {
  id: string;
  lineIds: string[];
  paperId: string;
  revision: number;
  toPay: number;
};

async function did(personId: string, operation: string, input: unknown): Promise<Out> {
  const request = newId();
  const answer = await shop.call(operation, input, { personId, device: 'child' }, { request });
  if (!answer.ok) throw new Error(`${operation} ${JSON.stringify(answer.error)}`);
  writeSync(1, `${JSON.stringify({ request, operation, personId, input, output: answer.output })}\n`);
  return answer.output as Out;
}

for (let visit = 1; ; visit += 1) {
  const order = await did(owner, 'order.book', {
    customer: { add: { name: `Customer ${visit}` } },
    car: { add: { plate: `K ${visit}`, words: 'Corvane R', unit: 'km' } },
    complaint: 'Noise',
    mileage: 100,
    here: true,
    booking: { bayId: bay, day: '2026-03-11', from: '08:00', hours: 1000 },
  });
  const found = await did(mechanic, 'finding.add', { orderId: order.id, text: 'Seal weeps' });
  await did(mechanic, 'finding.change', { id: found.id, revision: 1, text: 'Seal leaks' });
  const part = await did(owner, 'part.add', {
    number: newId().slice(0, 36),
    words: 'Seal',
    unit: '',
    price: 900,
    cost: 400,
    onHand: 4000,
  });
  await did(owner, 'part.receive', { partId: part.id, quantity: 1000, cost: 500 });
  const job = await did(owner, 'job.add', {
    orderId: order.id,
    job: { title: 'Seal' },
    findingId: found.id,
    lines: [
      { kind: 'labour', words: 'Fit', quantity: 500, unitPrice: 9600 },
      { kind: 'part', words: 'Seal', quantity: 1000, unitPrice: 900 },
    ],
  });
  await did(owner, 'line.change', { id: job.lineIds[1], revision: 1, change: { unitPrice: 950 } });
  await did(owner, 'line.add', {
    jobId: job.id,
    line: { kind: 'fee', words: 'Used oil', quantity: 1000, unitPrice: 400 },
  });
  await did(owner, 'discount.add', { orderId: order.id, on: 'labour', reduction: { bp: 500 } });
  const quote = await did(owner, 'quote.issue', { orderId: order.id });
  await did(owner, 'paper.sent', { id: quote.paperId, how: 'handed over' });
  await did(owner, 'decision.tried', { orderId: order.id, way: 'phone', reached: '555-0100' });
  await did(owner, 'decision.record', {
    orderId: order.id,
    jobs: [{ jobId: job.id, answer: 'yes' }],
    upTo: { total: 99_999 },
    spoken: { name: 'Customer', role: 'customer' },
    way: 'person',
  });
  await did(owner, 'payment.take', { orderId: order.id, kind: 'deposit', way: 'cash', amount: 1000 });
  const wait = await did(owner, 'awaited.order', {
    lineId: job.lineIds[1],
    kind: 'part',
    supplier: 'Pellin Parts',
    dueOn: null,
  });
  await did(owner, 'awaited.arrive', { id: wait.id, cost: 400 });
  await did(mechanic, 'clock.on', { jobId: job.id });
  const move = await did(mechanic, 'part.issue', {
    jobId: job.id,
    lineId: job.lineIds[1],
    partId: part.id,
    quantity: 2000,
  });
  await did(mechanic, 'part.putBack', { moveId: move.id, quantity: 1000 });
  await did(mechanic, 'clock.off', {});
  await did(owner, 'order.mileageOut', { id: order.id, revision: 1, mileage: 104 });
  const invoice = await did(owner, 'invoice.issue', { orderId: order.id });
  await did(owner, 'payment.take', { orderId: order.id, kind: 'payment', way: 'card', amount: invoice.toPay });
  await did(owner, 'creditNote.issue', {
    invoicePaperId: invoice.paperId,
    reason: 'one seal too many',
    lines: [{ lineId: job.lineIds[1], quantity: 500 }],
  });
  await did(owner, 'order.handOver', { id: order.id, revision: 2, to: 'Customer' });
}
