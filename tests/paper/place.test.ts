import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { InvoicePaper, PaperDocument, PaperJob } from '../../core/paper/document.ts';
import { type PaperLayout, paperLayout, paperPdf } from '../../core/paper/pdf/paper-pdf.ts';
import { FONTS } from './fonts.ts';
import { LONG_INVOICE } from './long-invoice.ts';
import { CREDIT_NOTE, INVOICE, job, line, QUOTE, RECEIPT } from './papers.ts';
import { inkIn, rasterise, readPages } from './read-back.ts';

/** 15 mm in points. */
const MARGIN = (15 / 25.4) * 72;
/** Side bearing of a letter and rounding of the file. */
const HAIR = 1.2;

type Item = PaperLayout['pages'][number]['items'][number];
interface Box {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

function boxes(items: readonly Item[]): readonly Box[] {
  return items.flatMap((item) => {
    if (item.kind !== 'text' || item.text.trim() === '') return [];
    const size = Math.max(...item.pieces.map((piece) => piece.size));
    return [
      {
        text: item.text,
        left: item.x,
        right: item.x + item.width,
        top: item.y - size * 0.68,
        bottom: item.y + size * 0.2,
      },
    ];
  });
}

function expectInPlace(layout: PaperLayout): void {
  for (const page of layout.pages) {
    const placed = boxes(page.items);
    for (const box of placed) {
      expect(box.left, box.text).toBeGreaterThanOrEqual(MARGIN - HAIR);
      expect(box.right, box.text).toBeLessThanOrEqual(layout.width - MARGIN + HAIR);
      expect(box.top, box.text).toBeGreaterThanOrEqual(MARGIN - HAIR);
      expect(box.bottom, box.text).toBeLessThanOrEqual(layout.height - MARGIN + HAIR);
    }
    for (const [index, one] of placed.entries())
      for (const other of placed.slice(index + 1)) {
        const overlaps =
          one.left < other.right - 0.01 &&
          other.left < one.right - 0.01 &&
          one.top < other.bottom &&
          other.top < one.bottom;
        if (overlaps) expect.fail(`“${one.text}” overlaps “${other.text}”`);
      }
  }
}

const wordsOf = (items: readonly Item[]): string =>
  boxes(items)
    .map((box) => box.text)
    .join('\n');

const PAPERS: readonly (readonly [string, PaperDocument])[] = [
  ['invoice, Letter', INVOICE],
  ['invoice, A4', { ...INVOICE, size: 'A4' }],
  ['quote, A4', QUOTE],
  ['quote, Letter', { ...QUOTE, size: 'Letter' }],
  ['credit note', CREDIT_NOTE],
  ['receipt', RECEIPT],
  ['long invoice', LONG_INVOICE],
  ['long invoice in German, A4', { ...LONG_INVOICE, size: 'A4', language: 'de' }],
];

describe('where things stand', () => {
  it.each(PAPERS)(
    '%s: nothing overlaps, nothing leaves the margins, nothing is under 9 points',
    async (_name, document) => {
      const { layout } = await paperLayout(document, FONTS);
      expectInPlace(layout);
      for (const page of layout.pages)
        for (const item of page.items)
          if (item.kind === 'text') for (const piece of item.pieces) expect(piece.size).toBeGreaterThanOrEqual(9);
    },
  );

  it.each(PAPERS)(
    '%s: drawn, the margins are white and the text stands where an outside reader finds it',
    async (_name, document) => {
      const bytes = await paperPdf(document, FONTS);
      const { layout } = await paperLayout(document, FONTS);
      const raster = await rasterise(bytes, 1, 1);
      const { width, height } = raster;
      const edge = MARGIN - HAIR;
      expect(inkIn(raster, 0, 0, width, edge)).toBeLessThan(0.5);
      expect(inkIn(raster, 0, height - edge, width, height)).toBeLessThan(0.5);
      expect(inkIn(raster, 0, 0, edge, height)).toBeLessThan(0.5);
      expect(inkIn(raster, layout.width - edge, 0, width, height)).toBeLessThan(0.5);
      const pages = await readPages(bytes);
      expect(pages).toHaveLength(layout.pages.length);
      for (const page of pages)
        for (const item of page) {
          expect(item.x).toBeGreaterThanOrEqual(MARGIN - HAIR);
          expect(item.x + item.width).toBeLessThanOrEqual(layout.width - MARGIN + HAIR);
        }
    },
  );

  it('the long invoice has three pages, each numbered, each saying Practice, each with its one-line head', async () => {
    const { layout } = await paperLayout(LONG_INVOICE, FONTS);
    expect(layout.pages).toHaveLength(3);
    layout.pages.forEach((page, index) => {
      const text = wordsOf(page.items);
      expect(text).toContain(`Invoice 1240, page ${index + 1} of 3`);
      expect(text).toContain('Practice');
      if (index > 0) expect(text).toMatch(/^Practice, Saltmarsh Motor Works\nInvoice 1240 · /);
    });
  });

  it('a job goes on under its letter, and its heading never stands without its first two lines', async () => {
    for (let before = 0; before < 30; before++) {
      const filler = job(
        'A',
        'Filler',
        0,
        Array.from({ length: before + 15 }, (_, n) => line(`Piece ${n}`, 1000, 0, 0)),
      );
      const last = job('B', 'Watched job', 0, [
        line('First line', 1000, 0, 0),
        line('Second line', 1000, 0, 0),
        line('Third line', 1000, 0, 0),
        line('Fourth line', 1000, 0, 0),
      ]);
      const { layout } = await paperLayout({ ...INVOICE, jobs: [filler, last] }, FONTS);
      const heading = layout.pages.findIndex((page) => /^Watched job$/m.test(wordsOf(page.items)));
      const text = wordsOf(layout.pages[heading]?.items ?? []);
      expect(text).toContain('First line');
      expect(text).toContain('Second line');
      const later = wordsOf(layout.pages[heading + 1]?.items ?? []);
      if (later.includes('Third line') || later.includes('Fourth line'))
        expect(later).toMatch(/Watched job, continued/);
    }
  });

  it('the sums are never parted', async () => {
    for (let count = 1; count < 40; count++) {
      const only = job(
        'A',
        'Pieces',
        0,
        Array.from({ length: count }, (_, n) => line(`Piece ${n}`, 1000, 0, 0)),
      );
      const { layout } = await paperLayout({ ...INVOICE, jobs: [only] }, FONTS);
      const page = layout.pages.find((one) => wordsOf(one.items).includes('Labour, 7.5 h'));
      const text = wordsOf(page?.items ?? []);
      for (const part of ['Total', '3,121.58', '−500.00', 'To pay', '2,621.58']) expect(text).toContain(part);
    }
  });

  it('what is taller than a page goes on on the next: many payments, a name of wide letters', async () => {
    const taken = Array.from({ length: 90 }, (_, n) => ({
      ...{ what: 'deposit' as const, method: 'card' as const, date: '2026-11-18', amount: 10_001 + n },
    }));
    const wide = Array.from({ length: 5 }, () => 'W'.repeat(120));
    const { layout } = await paperLayout({ ...INVOICE, taken, billTo: wide, purchaseOrder: 'P'.repeat(60) }, FONTS);
    expectInPlace(layout);
    const text = layout.pages.map((page) => wordsOf(page.items)).join('\n');
    for (const { amount } of taken) expect(text).toContain(`−${(amount / 100).toFixed(2)}`);
    expect(text.match(/W/g)?.length).toBeGreaterThanOrEqual(600);
    expect(text).toContain('2,621.58');
  });

  it('whatever is typed, nothing overlaps or leaves the page', { timeout: 60_000 }, async () => {
    const text = fc.oneof(
      fc.string({ unit: fc.constantFrom(...'aWmi ,-0Ω Яй'), maxLength: 160 }),
      fc.constantFrom(
        '',
        'Bolt',
        'x'.repeat(120),
        'A long row of short words that goes on and on until it has to turn',
      ),
    );
    const amount = fc.integer({ min: -900_000_000_000, max: 900_000_000_000 });
    const someLine = fc
      .tuple(text, fc.integer({ min: 0, max: 1_000_000_000 }), amount, amount, text)
      .map(([t, q, u, a, note]) => line(t, q, u, a, { note, partNumber: t.slice(0, 40) }));
    const someJob: fc.Arbitrary<PaperJob> = fc
      .tuple(text, amount, fc.array(someLine, { maxLength: 8 }))
      .map(([title, sum, lines]) => job('M', title, sum, lines));
    const paper: fc.Arbitrary<InvoicePaper> = fc
      .tuple(
        fc.array(someJob, { maxLength: 8 }),
        fc.array(text, { maxLength: 5 }),
        text,
        text,
        amount,
        fc.constantFrom('A4', 'Letter'),
      )
      .map(([jobs, billTo, complaint, warranty, toPay, size]) => ({
        ...INVOICE,
        jobs,
        billTo,
        complaint,
        warranty,
        toPay,
        size: size === 'A4' ? 'A4' : 'Letter',
        notices: billTo,
        garage: { ...INVOICE.garage, name: complaint.slice(0, 120) },
      }));
    await fc.assert(
      fc.asyncProperty(paper, async (document) => expectInPlace((await paperLayout(document, FONTS)).layout)),
      { numRuns: 150 },
    );
  });
});
