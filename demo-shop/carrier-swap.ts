import { requiredEntries } from '../core/bench/torque.ts';
import { groupOf } from '../core/bench/torque-group.ts';
import { PEOPLE, type StockIds } from './garage.ts';
import type { Story } from './story.ts';
import { labour, Visit } from './visit.ts';

/** Steps of the swap in the job book. */
const STEPS = 18;

/** What the shop asks and pays for each line of the swap, in the book's order; invented. */
const PRICES = [
  { partNumber: 'RD-4127X', unitPrice: 184_000, unitCost: 138_000, supplier: 'Ostrand Gearworks' },
  { partNumber: 'RG-1012', unitPrice: 485, unitCost: 260 },
  { partNumber: 'CW-18', unitPrice: 210, unitCost: 60 },
  { unitPrice: 390, unitCost: 150 },
  { unitPrice: 1875, unitCost: 820 },
  { partNumber: 'OR-583', unitPrice: 640, unitCost: 220 },
  { partNumber: 'GO-7590', unitPrice: 3150, unitCost: 1480 },
  { unitPrice: 35_000, unitCost: 35_000 },
] as const;

/** The carrier swap of an invented car from the call to the payment. All figures invented. */
export function carrierSwap(story: Story, stock: StockIds): void {
  const visit = new Visit(story);
  let awaitedId = '';
  let bookId = '';
  let invoiceId = '';
  story.scene(story.day(10, '17:00'), async () => {
    bookId = await priceInBook(story);
  });
  story.scene(story.day(9, '08:05'), () =>
    visit.book({
      customer: {
        add: {
          name: 'Ilse Vandermeer',
          phone: '555-0142',
          email: 'ilse@vandermeer.example',
          address: ['8 Tollgate Lane', 'Port Ansel'],
          tellBy: 'texts before calls',
        },
      },
      car: { add: { plate: 'KTB 4471', vin: '9ZCGT6R32GL005187', words: 'Corvane R', year: 2016, unit: 'mi' } },
      complaint: 'It whines from the back over fifty, louder on the overrun. Clunks when I take up the drive.',
      when: ['over 50', 'overrun'],
      mileage: 61_480,
      here: true,
      door: { fuel: 'half', keys: 1, oldParts: 'dispose', storageTold: true, testDrive: true },
    }),
  );
  story.scene(story.day(9, '08:30'), () => visit.job('Find the whine', [labour('Road test, on lift, listen', 800)]));
  story.scene(story.day(9, '08:45'), () => visit.yes(['A'], 18_000));
  story.scene(story.day(9, '09:00'), () => visit.on('Runa', 'A'));
  story.scene(story.day(9, '09:50'), async () => {
    await visit.off('Runa');
    const finding = await visit.found('Pinion bearing rough, bright flakes on the magnet.');
    await visit.fromBook(bookId);
    await story.did('Piet', 'finding.change', { id: finding, revision: 1, jobId: visit.jobId('B') });
    await visit.job('Send a sample of the old oil to the lab', [
      { kind: 'outside', words: 'Fennick Fluid Lab', quantity: 1000, unitPrice: 4200, unitCost: 3000 },
    ]);
  });
  story.scene(story.day(9, '10:20'), () => visit.quote());
  story.scene(story.day(9, '10:40'), async () => {
    await story.did('Piet', 'decision.tried', {
      orderId: visit.id,
      way: 'phone',
      reached: '555-0142',
      words: 'no answer',
    });
  });
  story.scene(story.day(9, '12:15'), async () => {
    await visit.yes(['A', 'B', 'C']);
    await visit.pay('deposit', 'card', 50_000);
    const { id } = await story.did('Piet', 'awaited.order', {
      lineId: visit.lineId('B', 1),
      kind: 'part',
      supplier: 'Ostrand Gearworks',
      reference: 'exchange, old carrier goes back',
      dueOn: null,
    });
    awaitedId = id;
  });
  story.scene(story.day(7, '08:20'), async () => {
    await story.did('Piet', 'awaited.arrive', { id: awaitedId, cost: 138_000 });
  });
  story.scene(story.day(7, '08:40'), async () => {
    await visit.on('Runa', 'B');
    for (const [place, partId, quantity] of [
      [2, stock.bolt, 12_000],
      [3, stock.washer, 2000],
      [6, stock.ring, 1000],
      [7, stock.gearOil, 1100],
    ] as const)
      await story.did('Runa', 'part.issue', {
        jobId: visit.jobId('B'),
        lineId: visit.lineId('B', place),
        partId,
        quantity,
      });
  });
  for (let n = 1; n <= STEPS; n += 1)
    story.scene(story.day(7, '08:45') + n * 11 * 60_000, () => tick(story, bookId, visit.jobId('B'), n));
  story.scene(story.day(7, '09:30'), () => visit.on('Nessa', 'B'));
  story.scene(story.day(7, '12:08'), async () => {
    await visit.off('Nessa');
    await visit.off('Runa');
  });
  story.scene(story.day(7, '14:00'), async () => {
    const { paperId, toPay } = await visit.invoice(61_492);
    invoiceId = paperId;
    await visit.pay('payment', 'card', toPay);
    await visit.handOver();
  });
  story.scene(story.day(4, '16:30'), async () => {
    const { gross } = await story.did('Piet', 'creditNote.issue', {
      invoicePaperId: invoiceId,
      reason: 'Old carrier is back at Ostrand Gearworks',
      lines: [{ lineId: visit.lineId('B', 8), quantity: 1000 }],
    });
    await visit.pay('refund', 'card', gross);
  });
}

/** The starting job for the swap with this shop's own part numbers and prices, in cents, as a version of its own. */
async function priceInBook(story: Story): Promise<string> {
  const { rows } = await story.did('Piet', 'jobBook.list', {});
  const swap = rows.find((row) => row.steps === STEPS);
  if (!swap) throw new Error('no carrier swap in the job book');
  const { id, version, content } = await story.did('Piet', 'jobBook.get', { id: swap.id });
  const lines = content.lines.map((line, place) => ({ ...line, ...PRICES[place] }));
  await story.did('Piet', 'jobBook.save', { id, basedOn: version, content: { ...content, lines } });
  return id;
}

/** Runa does the step, with all its torque entries; Nessa looks or signs where the book wants a second person. */
async function tick(story: Story, bookId: string, jobId: string, n: number): Promise<void> {
  const { content } = await story.did('Runa', 'jobBook.get', { id: bookId });
  const step = content.steps.find((one) => one.n === n);
  const torque = step?.torque ?? null;
  if (torque !== null)
    await story.did('Runa', 'torque.make', { jobId, step: n, touch: 0, count: requiredEntries(groupOf(torque)) });
  const nessa = PEOPLE.find((person) => person.name === 'Nessa');
  // What Runa reads lies in the middle of what the step allows.
  const { measure } = step ?? {};
  const middle = measure ? Number(((measure.least + measure.most) / 2).toFixed(3)) : 0;
  await story.did('Runa', 'step.tick', {
    jobId,
    n,
    state: 'done',
    reading: Array.from({ length: measure?.places ?? 0 }, () => middle),
    second: step?.second && nessa ? { personId: story.personId('Nessa'), code: nessa.code } : null,
  });
}
