import { createHash } from 'node:crypto';
import { guessMapping } from '../core/bring-in/fields.ts';
import { readTable } from '../core/bring-in/table.ts';
import { bringIn } from '../core/bring-in/whole-file.ts';
import { writeCsv } from '../core/take-out/csv.ts';
import type { Story } from './story.ts';

/** A car of the old books: who, what, how far it had gone at its last visit there and goes in a year, how often it came. */
interface OldCar {
  readonly name: string;
  readonly phone: string;
  readonly plate: string;
  readonly words: string;
  readonly year: number;
  readonly mileage: number;
  readonly aYear: number;
  readonly visits: number;
}

const car = (
  [name, phone]: readonly [string, string],
  [plate, words, year]: readonly [string, string, number],
  [mileage, aYear, visits]: readonly [number, number, number],
): OldCar => ({ name, phone, plate, words, year, mileage, aYear, visits });

/** People who came for years before the shop wrote with this program. Invented. */
export const OLD_CARS: readonly OldCar[] = [
  car(['Ilse Vandermeer', '555-0142'], ['KTB 4471', 'Corvane R', 2016], [54_900, 7200, 6]),
  car(['Agnes Pell', '555-0117'], ['JJD 311', 'Oriel Estate 2.0d', 2018], [38_400, 9800, 5]),
  car(['Rosa Thiele', '555-0133'], ['KLN 61', 'Corvane S4', 2014], [91_200, 6700, 8]),
  car(['Per Halloran', '555-0177'], ['OYB 902', 'Oriel Estate 2.0d', 2015], [103_500, 11_200, 9]),
  car(['Edda Marsh', '555-0161'], ['GNT 77', 'Brackwater Six', 2011], [126_300, 5400, 10]),
  car(['Piers Amory', '555-0165'], ['FDE 209', 'Brackwater Six', 2013], [88_700, 8100, 7]),
  car(['Joss Merriweather', '555-0168'], ['ELV 340', 'Oriel Estate 2.0d', 2017], [61_900, 9300, 6]),
  car(['Lio Brandt', '555-0172'], ['TAW 18', 'Oriel Estate 2.0d', 2012], [140_800, 10_400, 10]),
  car(['Ansel Harbour Board', '555-0174'], ['QOL 350', 'Corvane Pickup', 2019], [47_300, 12_600, 5]),
  car(['Tobias Okonjo', '555-0178'], ['MLW 208', 'Oriel Estate 2.0d', 2016], [79_100, 8800, 7]),
  car(['Wen Castellan', '555-0181'], ['SLP 615', 'Oriel Estate 2.0d', 2014], [95_600, 7700, 8]),
  car(['Harbour Launderette', '555-0183'], ['PA 77 KE', 'Brackwater Hauler', 2018], [72_400, 14_900, 6]),
  car(['Harbour Launderette', '555-0183'], ['PA 78 KE', 'Brackwater Hauler', 2020], [58_200, 15_300, 5]),
  car(['Maren Solheim', '555-0186'], ['DRF 552', 'Corvane S4', 2015], [84_500, 6900, 7]),
  car(['Corin Ashdown', '555-0189'], ['VNB 27', 'Marlow Kestrel 1.6', 2013], [77_800, 5100, 8]),
  car(['Thea Lindgren', '555-0191'], ['RKT 940', 'Marlow Kestrel 1.6', 2017], [49_700, 6300, 6]),
  car(['Ossian Grey', '555-0193'], ['HWL 3', 'Corvane Trail', 2012], [118_900, 8400, 9]),
  car(['Bettine Krol', '555-0195'], ['YDM 71', 'Oriel 2', 2019], [31_500, 5900, 4]),
  car(['Salt Lane Taxis', '555-0197'], ['SLT 1', 'Oriel Estate 2.0d', 2020], [171_000, 41_000, 12]),
  car(['Salt Lane Taxis', '555-0197'], ['SLT 2', 'Oriel Estate 2.0d', 2021], [128_000, 43_500, 9]),
  car(['Nell Abernethy', '555-0199'], ['CWT 806', 'Marlow Kestrel 1.6', 2011], [92_600, 3900, 9]),
];

const WORK = [
  ['Yearly service', '268.40'],
  ['Front brake pads and discs', '486.20'],
  ['Yearly service, brake fluid', '312.75'],
  ['Four tires, track set', '612.80'],
  ['Yearly service, coolant', '341.10'],
  ['Battery and earth strap', '214.30'],
  ['Rear shock absorbers, pair', '438.60'],
] as const;

const DAY = 86_400_000;
/** Between two visits, in days: a service every year, something else between. */
const APART = 305;

/** What the old books say, as the file that came out of them: one row a visit, customers and cars said again each time. */
function oldBooks(story: Story): string {
  const head = ['Name', 'Phone', 'Plate', 'Car', 'Year', 'Date', 'Mileage', 'Work', 'Total'];
  const rows = OLD_CARS.flatMap(({ name, phone, plate, words, year, mileage, aYear, visits }, place) =>
    Array.from({ length: visits }, (_, ago) => {
      const days = 330 + place * 3 + ago * APART;
      const on = new Date(story.end - days * DAY).toISOString().slice(0, 10);
      const then = Math.max(120, mileage - Math.floor((aYear * APART * ago) / 365));
      const [work, total] = WORK[(place + ago) % WORK.length] ?? WORK[0];
      return { at: on, cells: [name, phone, plate, words, String(year), on, String(then), work, total] };
    }).filter(({ at }) => Number(at.slice(0, 4)) >= year),
  );
  return writeCsv([head, ...rows.map(({ cells }) => cells)]);
}

/** The morning on which the old books were brought in, as a file from elsewhere. */
export function bringOldBooksIn(story: Story, say: (sentence: string) => void): void {
  story.scene(story.day(30, '08:15'), async () => {
    const bytes = new TextEncoder().encode(oldBooks(story));
    const table = readTable(bytes);
    if ('problem' in table) throw new Error(`the old books cannot be read: ${table.problem}`);
    const hash = createHash('sha256').update(bytes).digest('hex');
    const { made, bad } = await bringIn(
      { name: 'old-books.csv', hash, rows: table.rows },
      guessMapping(table.names, table.rows, 2),
      {
        begin: (input) => story.did('Piet', 'import.begin', input),
        put: (input) => story.did('Piet', 'import.put', input),
      },
    );
    if (bad.length > 0) throw new Error(`the old books do not fit: ${JSON.stringify(bad)}`);
    say(`${made.customers} customers, ${made.cars} cars and ${made.visits} visits came in from the old books.`);
  });
}
