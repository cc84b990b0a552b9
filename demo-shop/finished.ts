import type { Story } from './story.ts';
import { labour, part, Visit } from './visit.ts';

/** Orders whose invoice is out: to be paid, to be collected, to be given back, and settled. */
export function finishedOrders(story: Story): void {
  settledService(story);
  owedByTheBakery(story);
  paidNotCollected(story);
  readyToPay(story);
  depositTooHigh(story);
}

/** One job, agreed to, worked and invoiced on the n-th working day before the last. Returns the visit's invoice to pay. */
export function oneDayJob(
  story: Story,
  n: number,
  input: Parameters<Visit['book']>[0],
  title: string,
  lines: Parameters<Visit['job']>[1],
  mileageOut: number,
  then: (visit: Visit, toPay: number) => Promise<void>,
  deposit = 0,
): Visit {
  const visit = new Visit(story);
  story.scene(story.day(n, '08:10'), () => visit.book(input));
  story.scene(story.day(n, '08:20'), async () => {
    await visit.job(title, lines);
    await visit.quote();
  });
  story.scene(story.day(n, '09:10'), async () => {
    await visit.yes(['A']);
    if (deposit > 0) await visit.pay('deposit', 'card', deposit);
  });
  story.scene(story.day(n, '13:00'), () => visit.on('Nessa', 'A'));
  story.scene(story.day(n, '14:25'), () => visit.off('Nessa'));
  story.scene(story.day(n, '15:00'), async () => {
    const { toPay } = await visit.invoice(mileageOut);
    await then(visit, toPay);
  });
  return visit;
}

function settledService(story: Story): void {
  oneDayJob(
    story,
    10,
    {
      customer: { add: { name: 'Agnes Pell', phone: '555-0117', tellBy: 'calls' } },
      car: { add: { plate: 'JJD 311', words: 'Oriel Estate 2.0d', year: 2018, unit: 'mi' } },
      complaint: 'Yearly service, booked.',
      mileage: 48_210,
      here: true,
    },
    'Yearly service',
    [
      labour('Service', 1500),
      { kind: 'fluid', words: 'Engine oil 5W-30', quantity: 5200, unit: 'L', unitPrice: 1400 },
      part('Oil filter', 1, 1650, 720),
    ],
    48_214,
    async (visit, toPay) => {
      await visit.pay('payment', 'cash', toPay);
      await visit.handOver();
    },
  );
}

function owedByTheBakery(story: Story): void {
  oneDayJob(
    story,
    8,
    {
      customer: {
        add: {
          name: 'Gull Street Bakery',
          phone: '555-0160',
          email: 'office@gullstreet.example',
          poRequired: true,
          mayYes: [
            { name: 'Marit Engel', upTo: null },
            { name: 'Odile Engel', upTo: 50_000 },
          ],
        },
      },
      car: { add: { plate: 'RS 4233', words: 'Brackwater Hauler van', year: 2019, unit: 'mi' } },
      complaint: 'Battery light comes on with the headlights.',
      mileage: 88_910,
      here: true,
      poNumber: 'GS-0418',
    },
    'Alternator and belt',
    [labour('Remove and fit', 2200), part('Alternator', 1, 41_000, 27_500), part('Drive belt', 1, 3800, 1900)],
    88_915,
    async (visit) => visit.handOver(),
  );
}

function paidNotCollected(story: Story): void {
  oneDayJob(
    story,
    2,
    {
      customer: { add: { name: 'Rosa Thiele', phone: '555-0133' } },
      car: { add: { plate: 'KLN 61', words: 'Corvane S4', year: 2014, unit: 'mi' } },
      complaint: 'Handbrake comes up too far.',
      mileage: 97_302,
      here: true,
    },
    'Handbrake cable',
    [labour('Fit and adjust', 1300), part('Handbrake cable', 1, 5400, 2650)],
    97_306,
    (visit, toPay) => visit.pay('payment', 'transfer', toPay),
  );
}

function readyToPay(story: Story): void {
  oneDayJob(
    story,
    1,
    {
      customer: { add: { name: 'Bram Osker', phone: '555-0151' } },
      car: { add: { plate: 'DNE 5520', words: 'Brackwater Six', year: 2012, unit: 'mi' } },
      complaint: 'Squeals when I brake.',
      mileage: 120_044,
      here: true,
    },
    'Rear brake pads',
    [labour('Fit and bed in', 1200), part('Rear pads, set', 1, 7600, 4100)],
    120_051,
    async () => {},
  );
}

function depositTooHigh(story: Story): void {
  oneDayJob(
    story,
    3,
    {
      customer: { add: { name: 'Hedda Lorn', phone: '555-0124' } },
      car: { add: { plate: 'MVA 208', words: 'Oriel 2', year: 2020, unit: 'mi' } },
      complaint: 'Wiper leaves a streak, washer is weak.',
      mileage: 22_760,
      here: true,
    },
    'Wiper blades and washer jet',
    [labour('Fit', 500), part('Wiper blades, pair', 1, 4200, 2000), part('Washer jet', 1, 900, 300)],
    22_760,
    async () => {},
    20_000,
  );
}
