import type { PracticeShop } from './practice-shop.ts';
import { at } from './practice-shop.ts';

const spoken = { name: 'Per Halloran', role: 'customer' as const };
const labour = { kind: 'labour' as const, words: 'Look', quantity: 800, unitPrice: 12_800 };
const washer = { kind: 'part' as const, words: 'Washer', quantity: 2000, unitPrice: 210 };

/** One visit after which every table of the shop holds a row: booked, found, quoted, said, worked, billed and paid. */
export async function fillEveryTable(garage: PracticeShop): Promise<void> {
  const { people, bays } = await garage.did('Odile', 'shop.get', {});
  const piet = people.find(({ name }) => name === 'Piet')?.id ?? '';
  await garage.did('Runa', 'presence.come', {});
  const { id } = await garage.did('Desk', 'order.book', {
    customer: { add: { name: spoken.name, phone: '555-0177' } },
    car: { add: { plate: 'OYB 902', words: 'Oriel Estate', unit: 'km' } },
    complaint: 'Pulls left.',
    mileage: 61_000,
    here: true,
    booking: { bayId: bays[0]?.id ?? '', day: '2026-03-10', from: '08:00', hours: 2000 },
  });
  const scratch = { view: 'left' as const, x: 700, y: 500, words: 'Scratch, rear door' };
  await garage.did('Desk', 'mark.walkRound', { orderId: id, outline: 'estate', add: [scratch] });
  await garage.did('Runa', 'finding.add', { orderId: id, text: 'Worn tie rod', urgency: 'soon' });
  const part = await garage.did('Desk', 'part.add', {
    ...{ number: 'CW-18', words: 'Crush washer', unit: '' },
    ...{ price: 210, cost: 90, onHand: 10_000 },
  });
  const job = await garage.did('Desk', 'job.add', { orderId: id, job: { title: 'Look' }, lines: [labour, washer] });
  const { rows } = await garage.did('Desk', 'jobBook.list', {});
  const fromBook = await garage.did('Desk', 'job.fromBook', { orderId: id, bookJobId: rows[0]?.id ?? '' });
  await garage.did('Desk', 'discount.add', { orderId: id, on: 'parts', reduction: { bp: 500 } });
  await garage.did('Desk', 'awaited.order', {
    ...{ lineId: job.lineIds[1] ?? '', kind: 'part' as const, supplier: 'Northgate Gears', dueOn: '2026-03-11' },
  });
  const quote = await garage.did('Desk', 'quote.issue', { orderId: id });
  await garage.did('Desk', 'paper.sent', { id: quote.paperId, how: 'e-mail' });
  await garage.did('Desk', 'decision.tried', { orderId: id, way: 'phone', reached: '555-0177' });
  await garage.did('Desk', 'decision.record', {
    orderId: id,
    jobs: [job, fromBook].map((one) => ({ jobId: one.id, answer: 'yes' as const })),
    upTo: { total: 900_000 },
    spoken,
    way: 'person',
  });
  const drawn = { jobId: job.id, lineId: job.lineIds[1] ?? null, partId: part.id };
  await garage.did('Runa', 'part.issue', { ...drawn, quantity: 2000 });
  const { content } = await garage.did('Runa', 'jobBook.get', { id: rows[0]?.id ?? '' });
  await garage.did('Runa', 'step.tick', { jobId: fromBook.id, n: 1, state: 'done' });
  const wrench = await garage.did('Desk', 'wrench.add', { name: 'T1', most: 200_000 });
  for (const { n, second } of content.steps.filter(({ hold }) => hold !== ''))
    if (second !== 'does it')
      await garage.did('Runa', 'step.tick', { jobId: fromBook.id, n, state: 'not-needed', why: 'for the test' });
  const turned = content.steps.find(({ torque }) => torque !== null)?.n ?? 0;
  await garage.did('Runa', 'torque.make', { jobId: fromBook.id, step: turned, touch: 0, wrenchId: wrench.id });
  await writeDownAtTheBench(garage, id, fromBook.id);
  const drive = { orderId: id, purpose: 'confirm' as const, out: 61_000, in: 61_000, outcome: 'fine' as const };
  await garage.did('Runa', 'testDrive.record', drive);
  const tagged = await garage.did('Runa', 'quarantine.set', { orderId: id, what: 'part', words: 'Worn tie rod' });
  await garage.did('Odile', 'quarantine.lift', { ...tagged, why: 'Scrapped' });
  await garage.did('Runa', 'clock.on', { jobId: job.id });
  garage.now = at('2026-03-10T09:00');
  await garage.did('Runa', 'clock.off', {});
  await garage.did('Piet', 'clock.on', { jobId: job.id });
  garage.now = at('2026-03-10T10:00');
  const lost = await garage.did('Odile', 'clock.forgotten', { personId: piet });
  await garage.did('Odile', 'clock.correct', {
    ...{ entryId: lost.id, jobId: job.id, why: 'Went home' },
    ...{ on: at('2026-03-10T09:00'), off: at('2026-03-10T09:30') },
  });
  await garage.did('Desk', 'job.change', { id: job.id, revision: 1, change: { note: 'See the tie rod' } });
  const order = await garage.did('Desk', 'order.get', { id });
  await garage.did('Desk', 'order.mileageOut', { id, revision: order.revision, mileage: 61_001 });
  const { stops } = await garage.did('Desk', 'order.get', { id });
  const overrides = stops.map(({ what }) => ({ what, reason: 'Stands for the test' }));
  const invoice = await garage.did('Odile', 'invoice.issue', { orderId: id, overrides });
  await garage.did('Desk', 'payment.take', { orderId: id, kind: 'payment', way: 'cash', amount: invoice.toPay });
  const credited = { lineId: job.lineIds[1] ?? '', quantity: 1000 };
  await garage.did('Desk', 'creditNote.issue', {
    invoicePaperId: invoice.paperId,
    reason: 'One back',
    lines: [credited],
  });
  await atTheDesk(garage, id);
  await onAccount(garage);
  await garage.did('Piet', 'clock.on', { jobId: null, kind: 'break' });
}

/** An account over its limit, let pass. */
async function onAccount(garage: PracticeShop): Promise<void> {
  const account = await garage.did('Odile', 'customer.add', { name: 'Harbour Fleet', creditLimit: 10_000 });
  const { id } = await garage.did('Desk', 'order.book', {
    ...{ customer: { id: account.id }, car: { none: true as const }, complaint: 'A hose.', here: true },
  });
  const job = await garage.did('Desk', 'job.add', { orderId: id, job: { title: 'Hose' }, lines: [washer] });
  await garage.did('Desk', 'decision.record', {
    ...{ orderId: id, jobs: [{ jobId: job.id, answer: 'yes' as const }], upTo: { total: 10_001 } },
    ...{ spoken: { name: 'Harbour Fleet', role: 'customer' as const }, way: 'person' as const },
  });
  await garage.did('Odile', 'credit.letPass', { orderId: id, reason: 'Pays tomorrow' });
  await garage.did('Desk', 'privacy.ask', { customerId: account.id, askedOn: '2026-03-10', way: 'mail' });
}

/** One black pixel. */
const PIXEL = 'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNgAAAAAgABSK+kcQAAAABJRU5ErkJggg==';

/** A photo, oil out and in, a sample sent and answered, a walk-round. */
async function writeDownAtTheBench(garage: PracticeShop, orderId: string, jobId: string): Promise<void> {
  const step = { what: 'step' as const, id: jobId, step: 1 };
  await garage.did('Runa', 'photo.keep', { orderId, of: step, words: 'Magnet', base64: PIXEL });
  const calibration = { strokes: 53, quantity: 1060 };
  const pump = await garage.did('Runa', 'pump.add', { name: 'Blue pump', calibration });
  const oil = { unit: { name: 'Rear axle', serial: 'RD-4127' }, fluid: 'Gear oil' };
  const pumped = { strokes: 20, pumpId: pump.id };
  const wrong = await garage.did('Runa', 'fluid.record', { ...oil, jobId, step: 1, direction: 'in', amount: pumped });
  await garage.did('Runa', 'fluid.undo', { id: wrong.id });
  const sample = await garage.did('Runa', 'sample.draw', { ...oil, orderId, jobId, step: 1, distance: 20_000 });
  await garage.did('Runa', 'sample.send', { id: sample.id, revision: 1, lab: 'Fennick', on: '2026-03-10' });
  await garage.did('Desk', 'sample.result', {
    ...{ id: sample.id, revision: 2, on: '2026-03-10', remark: 'Fine.' },
    result: { metals: [{ element: 'Fe', ppm: 120_000 }] },
  });
  const list = { title: 'Walk-round', kind: 'walk-round' as const, items: [{ words: 'Wipers' }] };
  const { id: checkListId } = await garage.did('Desk', 'checkList.add', list);
  await garage.did('Runa', 'check.record', { orderId, checkListId, answers: [{ item: 0, seen: 'watch' }] });
}

/** What the day at the desk adds: somebody away, keys out, a message, a reminder asked, two entries joined. */
async function atTheDesk(garage: PracticeShop, orderId: string): Promise<void> {
  const { customer, car } = await garage.did('Desk', 'order.get', { id: orderId });
  const piet = garage.people.get('Piet') ?? '';
  await garage.did('Desk', 'absence.add', { personId: piet, from: '2026-03-12', to: '2026-03-12', words: 'ill' });
  await garage.did('Desk', 'key.handOut', { orderId, toWhom: spoken.name });
  await garage.did('Desk', 'message.record', {
    ...{ customerId: customer.id, orderId, about: 'ready', way: 'mail', reached: true, words: 'It is ready.' },
  });
  const reminder = await garage.did('Desk', 'reminder.add', { carId: car.id, words: 'Tie rod', dueOn: '2026-09-10' });
  await garage.did('Desk', 'reminder.try', { ...reminder, outcome: 'nobody' });
  const days = { from: '2026-03-01', until: '2026-03-10', asOf: garage.now };
  await garage.did('Desk', 'statement.noted', { customerId: customer.id, ...days, what: 'made' });
  await garage.did('Desk', 'statement.sent', { customerId: customer.id, ...days, how: 'by post' });
  const asked = await garage.did('Desk', 'customer.get', { id: customer.id });
  await garage.did('Desk', 'customer.consent', {
    ...{ id: customer.id, revision: asked.revision, what: 'photos', answer: 'yes', way: 'signed' },
  });
  const again = await garage.did('Desk', 'customer.add', { name: 'P. Halloran' });
  const { revision } = await garage.did('Desk', 'customer.get', { id: customer.id });
  await garage.did('Desk', 'customer.join', {
    ...{ fromId: again.id, fromRevision: again.revision, intoId: customer.id, intoRevision: revision },
  });
  const old = await garage.did('Desk', 'import.begin', {
    ...{ fileName: 'old.csv', fileHash: '0'.repeat(64) },
    mapping: { columns: ['car-plate', 'car-model', 'visit-on', 'visit-words'], dates: 'ymd' },
  });
  const before = ['KD 14 MW', 'Oriel Van', '2019-04-03', 'Rear axle oil'];
  await garage.did('Desk', 'import.put', { id: old.id, rows: [{ line: 2, cells: before }] });
}
