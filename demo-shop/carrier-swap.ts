import type { StockIds } from './garage.ts';
import type { Story } from './story.ts';
import { labour, part, Visit } from './visit.ts';

/** The carrier swap of an invented car from the call to the payment. All figures invented. */
export function carrierSwap(story: Story, stock: StockIds): void {
  const visit = new Visit(story);
  let awaitedId = '';
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
    await visit.job(
      'Swap the differential carrier for a rebuilt one, ring gear moved over',
      [
        labour('Remove and fit, two people', 6200),
        { ...part('Rebuilt carrier, exchange', 1, 184_000, 138_000), partNumber: 'RD-4127X', condition: 'rebuilt' },
        { ...part('Ring-gear bolt, M10 fine', 12, 485, 260), partNumber: 'RG-1012', partId: stock.bolt },
        { ...part('Crush washer, drain and fill', 2, 210, 60), partNumber: 'CW-18', partId: stock.washer },
        { ...part('O-ring 58 x 3', 1, 640, 220), partNumber: 'OR-583', partId: stock.ring },
        { kind: 'fluid', words: 'Gear oil 75W-90', partId: stock.gearOil, quantity: 1100, unit: 'L', unitPrice: 3150 },
        { kind: 'supplies', words: 'Cleaner, rags, threadlock', quantity: 1000, unitPrice: 980 },
      ],
      finding,
    );
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
    await visit.on('Nessa', 'B');
    for (const [place, partId, quantity] of [
      [2, stock.bolt, 12_000],
      [3, stock.washer, 2000],
      [4, stock.ring, 1000],
      [5, stock.gearOil, 1100],
    ] as const)
      await story.did('Runa', 'part.issue', {
        jobId: visit.jobId('B'),
        lineId: visit.lineId('B', place),
        partId,
        quantity,
      });
  });
  story.scene(story.day(7, '11:15'), () => visit.off('Nessa'));
  story.scene(story.day(7, '12:15'), () => visit.off('Runa'));
  story.scene(story.day(7, '14:00'), async () => {
    const { toPay } = await visit.invoice(61_492);
    await visit.pay('payment', 'card', toPay);
    await visit.handOver();
  });
}
