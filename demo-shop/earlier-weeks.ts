import { oneDayJob } from './finished.ts';
import { OLD_CARS } from './old-books.ts';
import type { Story } from './story.ts';
import { labour, part } from './visit.ts';

type Lines = Parameters<typeof oneDayJob>[4];
type Way = 'cash' | 'card' | 'transfer';

const oil = (litres: number): Lines[number] => ({
  ...{ kind: 'fluid', words: 'Engine oil 5W-30', quantity: litres * 1000, unit: 'L', unitPrice: 1400 },
});
const service: Lines = [
  labour('Service', 1500),
  oil(5),
  part('Oil filter', 1, 1650, 720),
  part('Air filter', 1, 2400, 1050),
];
const pads: Lines = [labour('Fit and bed in', 1200), part('Front pads, set', 1, 7900, 4300)];

/** Four quiet weeks: working days before the last, the car by its plate, what was said, what was done, how it was paid. */
const WEEKS: readonly (readonly [number, string, string, string, Lines, Way])[] = [
  [29, 'OYB 902', 'Yearly service, please.', 'Yearly service', service, 'card'],
  [28, 'GNT 77', 'Squeals when I brake.', 'Front brake pads', pads, 'cash'],
  [27, 'SLT 1', 'Service is due again.', 'Service', service, 'transfer'],
  [
    26,
    'TAW 18',
    'Misses when cold.',
    'Injector seals 2 and 4',
    [labour('Remove, seat, fit', 2600), part('Seal, set', 2, 1450, 600)],
    'card',
  ],
  [
    25,
    'VNB 27',
    'Battery was flat twice.',
    'Battery',
    [labour('Fit and test', 500), part('Battery 60 Ah', 1, 11_900, 7400)],
    'cash',
  ],
  [
    24,
    'FDE 209',
    'Rattles over bumps.',
    'Drop links, front',
    [labour('Both sides', 900), part('Drop link', 2, 3100, 1450)],
    'card',
  ],
  [
    23,
    'PA 77 KE',
    'Front tires are worn.',
    'Two tires',
    [labour('Fit and balance', 700), part('Tire 205/65 R16', 2, 12_400, 8900)],
    'transfer',
  ],
  [
    22,
    'DRF 552',
    'Air conditioning smells.',
    'Cabin filter, clean',
    [labour('Fit and clean', 600), part('Cabin filter', 1, 2900, 1200)],
    'card',
  ],
  [21, 'SLT 2', 'Service is due again.', 'Service', service, 'transfer'],
  [20, 'RKT 940', 'Yearly service, please.', 'Yearly service', service, 'card'],
  [
    19,
    'ELV 340',
    'Handbrake is weak.',
    'Handbrake set, cable',
    [labour('Fit and set', 1300), part('Handbrake cable', 1, 5400, 2650)],
    'cash',
  ],
  [
    18,
    'HWL 3',
    'Oil under it in the morning.',
    'Sump gasket',
    [labour('Off, clean, fit', 1900), part('Gasket', 1, 3300, 1500), oil(6)],
    'card',
  ],
  [
    17,
    'QOL 350',
    'Wipers and lights before the winter.',
    'Blades, bulbs',
    [labour('Fit', 400), part('Blades, pair', 1, 4200, 2000), part('Bulb H7', 2, 900, 350)],
    'transfer',
  ],
  [
    16,
    'MLW 208',
    'Clunk when I set off.',
    'Engine mount',
    [labour('Support, fit', 1700), part('Engine mount', 1, 9800, 5600)],
    'card',
  ],
  [15, 'YDM 71', 'Yearly service, please.', 'Yearly service', service, 'card'],
  [
    14,
    'CWT 806',
    'Temperature goes up in town.',
    'Thermostat',
    [labour('Drain, fit, bleed', 1200), part('Thermostat', 1, 4700, 2100)],
    'cash',
  ],
  [13, 'SLP 615', 'Idles high.', 'Throttle body cleaned', [labour('Off, clean, set', 1100)], 'card'],
  [12, 'PA 78 KE', 'Service is due.', 'Service', service, 'transfer'],
  [
    11,
    'SLT 1',
    'Rear brakes grind.',
    'Rear pads and discs',
    [labour('Fit and bed in', 1600), part('Disc', 2, 6900, 3900), part('Pads, set', 1, 7600, 4100)],
    'transfer',
  ],
];

/** What somebody said no or later to on that day: it stays with the car, and is asked about again. */
const REFUSED: Readonly<Record<number, readonly [string, Lines, 'no' | 'later', string]>> = {
  28: [
    'Front discs',
    [labour('With the pads', 400), part('Disc', 2, 6900, 3900)],
    'later',
    'Discs at 22.1 mm, wear limit near',
  ],
  23: [
    'Rear shock absorbers',
    [labour('Both', 1400), part('Shock absorber', 2, 11_800, 7200)],
    'no',
    'The back sways when loaded',
  ],
  16: [
    'Lower arm bush, left',
    [labour('Press in', 1100), part('Bush', 1, 2700, 1100)],
    'later',
    'Tires will wear on the inside',
  ],
};

/** People of the old books who came again before the two weeks that the rest of the story is about. */
export function earlierWeeks(story: Story): void {
  for (const [n, plate, complaint, title, lines, way] of WEEKS) {
    const old = OLD_CARS.find((one) => one.plate === plate);
    if (old === undefined) throw new Error(`${plate} is not in the old books`);
    const mileage = old.mileage + Math.floor((old.aYear * 11) / 12) + (29 - n) * 20;
    const visit = oneDayJob(
      story,
      n,
      {
        customer: { add: { name: old.name, phone: old.phone } },
        car: { add: { plate, words: old.words, year: old.year, unit: 'mi' } },
        ...{ complaint, mileage, here: true },
      },
      title,
      lines,
      mileage + 4,
      async (visit, toPay) => {
        await visit.pay('payment', way, toPay);
        await visit.handOver();
      },
    );
    const refused = REFUSED[n];
    if (refused === undefined) continue;
    const [offered, offeredLines, answer, risk] = refused;
    story.scene(story.day(n, '09:20'), async () => {
      await visit.job(offered, offeredLines);
      await visit.no('B', answer, risk);
    });
  }
}
