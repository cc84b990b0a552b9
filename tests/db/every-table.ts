import type { PracticeShop } from './practice-shop.ts';
import { at } from './practice-shop.ts';

const spoken = { name: 'Per Halloran', role: 'customer' as const };
const labour = { kind: 'labour' as const, words: 'Look', quantity: 800, unitPrice: 12_800 };
const washer = { kind: 'part' as const, words: 'Washer', quantity: 2000, unitPrice: 210 };

/** Tables that no operation fills yet. Only ever shortened. */
export const NOT_YET: readonly string[] = [
  'wrench',
  'torque_entry',
  'photo',
  'photo_use',
  'pump',
  'pump_calibration',
  'fluid_entry',
  'fluid_sample',
  'test_drive',
  'check_list',
  'check_done',
  'quarantine',
  'absence',
  'car_mark',
  'car_mark_seen',
  'key_out',
  'message',
  'reminder',
  'reminder_try',
  'customer_join',
  'import_run',
  'import_made',
  'past_visit',
];

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
  await garage.did('Runa', 'step.tick', { jobId: fromBook.id, n: 1, state: 'done' });
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
  await garage.did('Piet', 'clock.on', { jobId: null, kind: 'break' });
}
