import { createCanvas } from '@napi-rs/canvas';
import { describe, expect, it } from 'vitest';
import { labelLines, labelPdf } from '../../core/paper/pdf/label-pdf.ts';
import { seenPdf } from '../../core/paper/pdf/seen-pdf.ts';
import type { PaperPicture, SampleLabel, SeenPaper } from '../../core/paper/seen.ts';
import { readPicture } from '../../core/photo/picture.ts';
import { withOrientation } from '../core/photo/exif.ts';
import { FONTS } from './fonts.ts';
import { COMMON } from './papers.ts';
import { inkIn, openPdf, rasterise, readPages, textOf } from './read-back.ts';

const CAR = { name: 'Corvane R, 2016', plate: 'KTB 4471', vin: '9ZCGT6R32GL005187' };
const AT = { date: '2026-11-20', time: '15:20' };

/** Black in its upper left quarter as it is stored, white else. */
const jpeg = (orientation: number): PaperPicture => {
  const canvas = createCanvas(160, 120);
  const pen = canvas.getContext('2d');
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, 160, 120);
  pen.fillStyle = '#000';
  pen.fillRect(0, 0, 80, 60);
  const bytes = withOrientation(canvas.toBuffer('image/jpeg', 95), orientation, 'MM');
  const found = readPicture(bytes);
  if (found?.kind !== 'jpeg') throw new Error('no picture');
  const { width, height, turn } = found;
  const base64 = Buffer.from(bytes).toString('base64');
  return { kind: 'jpeg', width, height, turn, base64, words: 'the magnet', taken: AT, by: 'Runa' };
};

const SEEN: SeenPaper = {
  practice: false,
  language: 'en',
  size: 'Letter',
  currency: COMMON.currency,
  garage: COMMON.garage,
  orderNumber: 1187,
  customer: 'Ilse Vandermeer',
  car: CAR,
  mileage: { unit: 'mi', reading: 61_480 },
  title: 'Walk-round',
  by: 'Runa',
  at: AT,
  madeAt: Date.UTC(2026, 10, 20, 20, 20),
  rows: [
    { seen: 'fine', words: 'Lights', place: '', said: '', measured: null, pictures: [] },
    {
      ...{ seen: 'soon', words: 'Tyre', place: 'front left', said: '' },
      measured: { what: 'tread', value: 2100, unit: 'mm', least: 1600, most: null, source: 'an invented rule' },
      pictures: [],
    },
    { seen: 'unsafe', words: 'Brake hoses', place: '', said: 'cracked to the cords', measured: null, pictures: [] },
    { seen: 'not-seen', words: 'Exhaust', place: 'rear', said: '', measured: null, pictures: [] },
  ],
  pictures: [],
};
const textIn = async (bytes: Uint8Array) => (await readPages(bytes)).map(textOf).join('\n');

describe('what was seen, for the customer', () => {
  it('tells the unsafe first, the measured value against its limit and its source, and promises no work', async () => {
    const text = await textIn(await seenPdf(SEEN, FONTS));
    for (const part of [
      'What we saw',
      'Ilse Vandermeer · Corvane R, 2016 · plate KTB 4471 · VIN 9ZCGT6R32GL005187 · 61,480 mi · order 1187',
      'Walk-round, gone through by Runa, 20 Nov 2026, 15:20',
      'Unsafe now The car should not be driven before this is mended.',
      'Brake hoses cracked to the cords',
      'Tyre, front left tread 2.1 mm (at least 1.6 mm, limit: an invented rule)',
      'Exhaust rear',
      'None of this is ordered by this paper.',
      'page 1 of 1',
    ])
      expect(text).toContain(part);
    expect(text.indexOf('Unsafe now')).toBeLessThan(text.indexOf('Soon'));
    expect(text.indexOf('Soon')).toBeLessThan(text.indexOf('Nothing found'));
    expect(text).not.toContain('US$');
    expect(text).not.toContain('Practice');
  });

  it('in German, of a practice shop, on A4', async () => {
    const currency = { ...SEEN.currency, decimal: ',', group: '.' } as const;
    const text = await textIn(await seenPdf({ ...SEEN, language: 'de', size: 'A4', practice: true, currency }, FONTS));
    for (const part of ['Übung', 'Was wir gesehen haben', 'Jetzt nicht sicher', 'mindestens 1,6 mm', '61.480 mi'])
      expect(text).toContain(part);
  });

  it('gives the same bytes every time, and breaks over pages', async () => {
    const rows = Array.from({ length: 120 }, (_, at) => ({
      ...{ seen: 'soon' as const, words: `Thing ${at}`, place: '', said: 'worn', measured: null, pictures: [] },
    }));
    const first = await seenPdf({ ...SEEN, rows }, FONTS);
    expect(Buffer.compare(first, await seenPdf({ ...SEEN, rows }, FONTS))).toBe(0);
    const pages = (await readPages(first)).map(textOf);
    expect(pages.length).toBeGreaterThan(1);
    for (let at = 0; at < 120; at += 1) expect(pages.join('\n')).toContain(`Thing ${at} worn`);
  });

  // Where the black quarter of the stored picture lies once it stands upright (Exif 2.3, tag 274).
  it.each([
    [1, 'left', 'top'],
    [3, 'right', 'bottom'],
    [6, 'right', 'top'],
    [8, 'left', 'bottom'],
  ])('a photo of orientation %i stands upright: black %s %s', async (orientation, across, up) => {
    const bytes = await seenPdf({ ...SEEN, title: '', rows: [], pictures: [jpeg(orientation)] }, FONTS);
    const page = (await readPages(bytes))[0] ?? [];
    expect(textOf(page)).toContain('the magnet. 20 Nov 2026, 15:20, Runa');
    const caption = page.find(({ text }) => text.startsWith('the'));
    const raster = await rasterise(bytes, 1, 1);
    // 150 points high above its words, and as wide as its proportions make it: 4 to 3, or 3 to 4.
    const foot = raster.height - (caption?.y ?? 0) - 12;
    const [left, right, top] = [42.5, 42.5 + (orientation < 5 ? 200 : 112.5), foot - 150];
    const [middle, waist] = [(left + right) / 2, (top + foot) / 2];
    const quarters = {
      'left top': inkIn(raster, left, top, middle, waist),
      'right top': inkIn(raster, middle, top, right, waist),
      'left bottom': inkIn(raster, left, waist, middle, foot),
      'right bottom': inkIn(raster, middle, waist, right, foot),
    };
    const [darkest] = Object.entries(quarters).sort(([, a], [, b]) => b - a);
    expect(darkest?.[0]).toBe(`${across} ${up}`);
    const all = Object.values(quarters).reduce((sum, one) => sum + one, 0);
    expect((darkest?.[1] ?? 0) / all).toBeGreaterThan(0.9);
  });
});

describe('the label of a sample', () => {
  const LABEL: SampleLabel = {
    practice: false,
    language: 'en',
    currency: COMMON.currency,
    garage: 'Saltmarsh Motor Works',
    label: '1187-1',
    car: CAR,
    unit: 'Rear axle',
    serial: 'RD-4127X',
    fluid: 'gear oil 75W-90',
    distanceUnit: 'mi',
    distance: 12_000,
    mileage: 61_480,
    drawn: '2026-11-20',
    by: 'Runa',
    madeAt: Date.UTC(2026, 10, 20, 20, 20),
  };

  it('names car, unit by serial, fluid, distance and day; 90 x 50 mm', async () => {
    expect(labelLines(LABEL).map((line) => line.replaceAll('\u00a0', ' '))).toEqual([
      '1187-1',
      'Saltmarsh Motor Works',
      'Corvane R, 2016, KTB 4471',
      'VIN 9ZCGT6R32GL005187',
      'Rear axle, serial RD-4127X',
      'gear oil 75W-90',
      '12,000 mi on this fluid, clock 61,480 mi',
      'drawn 20 Nov 2026, Runa',
    ]);
    const bytes = await labelPdf(LABEL, FONTS);
    const [page] = await readPages(bytes);
    expect(textOf(page ?? [])).toContain('Rear axle, serial RD-4127X');
    const { width, height } = (await (await openPdf(bytes)).getPage(1)).getViewport({ scale: 25.4 / 72 });
    expect([width, height].map(Math.round)).toEqual([90, 50]);
  });

  it('keeps even long words on the label, none smaller than 7 points', async () => {
    const long = { ...LABEL, garage: 'A garage with a long name on the corner of two streets', fluid: 'x'.repeat(80) };
    const [page = []] = await readPages(await labelPdf({ ...long, unit: 'The unit with the longest name' }, FONTS));
    expect(Math.min(...page.map(({ y }) => y))).toBeGreaterThan(2);
    expect(Math.min(...page.map(({ size }) => size))).toBeGreaterThanOrEqual(7);
  });
});
