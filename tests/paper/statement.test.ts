import { describe, expect, test } from 'vitest';
import { PaperCharacterMissing } from '../../core/paper/pdf/paper-pdf.ts';
import { JoinedStatements, statementPdf } from '../../core/paper/pdf/statement-pdf.ts';
import type { StatementDocument } from '../../core/paper/statement.ts';
import { FONTS } from './fonts.ts';
import { inkIn, openPdf, rasterise, readPages, textOf } from './read-back.ts';
import { FULL, LONG, statementPaper, WORKED } from './statements.ts';

const read = async (bytes: Promise<Uint8Array>) => (await readPages(await bytes)).map(textOf);

describe('the statement on paper', () => {
  test('the worked sum reads back: before, each move, after, and what it was made from', async () => {
    const [text = '', ...more] = await read(statementPdf(WORKED, FONTS));
    expect(more).toEqual([]);
    for (const part of [
      ...['Statement', '1 Jun to 30 Jun 2026', 'Hollow Lane Farm', 'tax no. T-2207', 'page 1 of 1'],
      ...['what was written down by 1 Jul 2026, 9:12', 'Owed before 1 Jun 2026', '3,850.00', '2,617.80', '−2,000.00'],
      ...['Payment 502, transfer', 'OYB 902, order 1187', '4,467.80', '11 days past due', '10 days to go', '1,850.00'],
    ])
      expect(text).toContain(part);
    expect(text).not.toContain('Practice');
  });

  test('dates in figures where the shop writes them so', async () => {
    const text = (await read(statementPdf({ ...WORKED, dateForm: 'month-day' }, FONTS))).join('\n');
    for (const part of ['06/01/2026 to 06/30/2026', 'by 07/01/2026, 9:12', 'Owed before 06/01/2026', '06/19/2026'])
      expect(text).toContain(part);
    expect(text).not.toMatch(/\d Ju[nl]/);
    const pages = await read(statementPdf({ ...LONG, dateForm: 'year-month' }, FONTS));
    expect(pages[1]).toMatch(/Statement \d{4}-\d\d-\d\d to \d{4}-\d\d-\d\d/);
  });

  test('money that stands alone is named apart, and no bucket holds it', async () => {
    const text = (await read(statementPdf(FULL, FONTS))).join('\n');
    expect(text).toMatch(/Stands alone[\s\S]*paid for PLT 9, order 1190[\s\S]*−40\.00/);
    const buckets = text.slice(text.indexOf('By days past due'), text.indexOf('Stands alone'));
    for (const sum of ['2,617.80', '0.00', '75.50', '60.00', '410.00']) expect(buckets).toContain(sum);
    expect(text).toContain('Cash rounding 499');
  });

  test('over pages: a short head, the columns and the sum carried over; practice on each', async () => {
    const pages = await read(statementPdf(LONG, FONTS));
    expect(pages.length).toBeGreaterThan(2);
    for (const [at, page] of pages.entries()) {
      expect(page).toContain(`page ${at + 1} of ${pages.length}`);
      expect(page).toContain('Practice');
    }
    expect(pages[0]).not.toContain('Carried over');
    const carried = /Carried over\s+([\d,.]+)/.exec(pages[1] ?? '')?.[1] ?? '';
    expect(carried).not.toBe('');
    expect(pages[0]?.replace(/\s+/g, ' ')).toContain(carried);
    // The sum that is carried is the last balance of the page before.
    const balances = LONG.rows.map(({ balance }) => balance);
    expect(balances).toContain(Math.round(Number(carried.replace(/,/g, '')) * 100));
    expect(pages.at(-1)).toContain('By days past due');
    expect(pages.at(-1)).toMatch(/days? (past due|to go)/);
  });

  test.each([
    ['Letter', 'en', 612, 792, 'Statement'],
    ['A4', 'de', 595.28, 841.89, 'Kontoauszug'],
  ] as const)(
    '%s, %s: its size, nothing under 9 points, nothing over the edge',
    async (size, language, wide, high, title) => {
      const bytes = await statementPdf(
        { ...FULL, size, language, to: ['Κωνσταντίνος Παπαδόπουλος', 'Улица 14'] },
        FONTS,
      );
      const pdf = await openPdf(bytes);
      const [, , width = 0, height = 0] = (await pdf.getPage(1)).view;
      expect(width).toBeCloseTo(wide, 1);
      expect(height).toBeCloseTo(high, 1);
      const pages = await readPages(bytes);
      const pieces = pages.flat();
      expect(Math.min(...pieces.map((piece) => piece.size))).toBeGreaterThanOrEqual(9);
      expect(Math.max(...pieces.map((piece) => piece.x + piece.width))).toBeLessThan(wide - 42);
      const text = textOf(pages[0] ?? []);
      for (const part of [title, 'Κωνσταντίνος Παπαδόπουλος', 'Улица 14']) expect(text).toContain(part);
      const raster = await rasterise(bytes, 1, 2);
      const name = pages[0]?.find((piece) => piece.text.includes('Улица'));
      const top = raster.height - ((name?.y ?? 0) + 10) * 2;
      expect(inkIn(raster, 80, top, 200, top + 24)).toBeGreaterThan(200);
    },
  );

  test('sums of any length keep to their columns', async () => {
    const most = 900_000_000_000;
    const rows = WORKED.rows.map((row) => ({ ...row, amount: most, balance: most }));
    const bytes = await statementPdf({ ...WORKED, rows, closing: most }, FONTS);
    expect(textOf((await readPages(bytes))[0] ?? [])).toContain('9,000,000,000.00');
  });

  test('nothing owed and nothing moved is said, not left blank', async () => {
    const none = statementPaper([], { from: '2026-06-01', until: '2026-06-30' });
    const [text] = await read(statementPdf(none, FONTS));
    expect(text).toContain('Nothing was charged and nothing was paid in these days.');
    expect(text).toContain('Nothing is to be paid.');
  });

  test('joined, each begins a page and counts its own; the same statements are the same bytes', async () => {
    const all = [WORKED, { ...LONG, size: 'Letter' } as const, FULL];
    const join = async (some: readonly StatementDocument[]) => {
      const joined = await JoinedStatements.start(FONTS);
      for (const one of some) joined.add(one);
      return joined.pdf();
    };
    const bytes = await join(all);
    const pages = (await readPages(bytes)).map(textOf);
    const alone = (await Promise.all(all.map((one) => read(statementPdf(one, FONTS))))).flat();
    expect(pages).toEqual(alone);
    expect(Buffer.from(await join(all)).equals(Buffer.from(bytes))).toBe(true);
    await expect(join([])).rejects.toThrow(RangeError);
  });

  test('a character that no font has is refused by name', async () => {
    await expect(statementPdf({ ...WORKED, to: ['車'] }, FONTS)).rejects.toThrow(PaperCharacterMissing);
  });
});
