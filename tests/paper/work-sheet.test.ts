import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { touchesOf } from '../../core/bench/torque-group.ts';
import { torque as torqueShape } from '../../core/contract/procedure.ts';
import { workSheetLayout, workSheetPdf } from '../../core/paper/pdf/work-sheet-pdf.ts';
import type { WorkSheetDocument, WorkSheetStep } from '../../core/paper/work-sheet.ts';
import { FONTS } from './fonts.ts';
import { openPdf, readPages, textOf } from './read-back.ts';
import { SWAP_SHEET } from './work-sheets.ts';

const BLANK: WorkSheetStep = {
  ...{ n: 1, do: 'Tighten', tool: '', hold: '', second: '', care: '', plug: '', torque: null, oneTime: [] },
  ...{ fluidIn: null, fluidOut: null, level: '', sample: null, measure: null, photoWanted: false, reopens: null },
  ...{ recheckCard: false, source: '', done: '', made: 0 },
};
const sheetOf = (step: Partial<WorkSheetStep>): WorkSheetDocument => ({
  ...SWAP_SHEET,
  steps: [{ ...BLANK, ...step }],
});
const itemsOf = async (document: WorkSheetDocument) =>
  (await workSheetLayout(document, FONTS)).layout.pages.flatMap((page) => page.items);
const BOX = 15.75;
const boxesIn = (items: Awaited<ReturnType<typeof itemsOf>>) =>
  items.filter((item) => item.kind === 'frame' && item.width === BOX && item.height === BOX).length;
const read = async (document: WorkSheetDocument) => (await readPages(await workSheetPdf(document, FONTS))).map(textOf);

describe('the bench copy', () => {
  it('of the swap holds its steps, its seconds in words, its rounds in both units, and no sum', async () => {
    const pages = await read(SWAP_SHEET);
    const text = pages.join('\n');
    expect(pages.length).toBeLessThanOrEqual(2);
    for (const part of [
      ...['Bench copy', 'Order 1187, B', 'KTB 4471', 'VIN 9ZCGT6R32GL005187', 'yes on 18 Nov', 'job book version 4'],
      ...['Figures: invented for practice', 'Sample: 100 ml, mid-stream.', 'sample no.', 'photo', 'card given'],
      ...['61,480 at the door', 'Fill plug before drain plug.', 'Hold: seized: stop, price, ask.'],
      ...['30 N·m 22 lbf·ft', '85 N·m 63 lbf·ft', 'side 2', 'Runa, 3.6', 'Clocks, true times'],
      ...['wrench no. and date it is good to', 'manual rules over this sheet', 'page 1 of 2'],
    ])
      expect(text).toContain(part);
    expect(text).toMatch(/\bsign\b/);
    expect(text).not.toMatch(/\d\.\d\d\b(?! to| mm)/);
  });

  it.each([
    ['Letter', 'en', 612, 792],
    ['A4', 'de', 595.28, 841.89],
  ] as const)(
    '%s, %s: every page has its size, nothing under 9 points, fonts embedded',
    async (size, language, wide, high) => {
      const bytes = await workSheetPdf({ ...SWAP_SHEET, size, language, practice: true }, FONTS);
      const pdf = await openPdf(bytes);
      for (let page = 1; page <= pdf.numPages; page += 1) {
        const [, , width = 0, height = 0] = (await pdf.getPage(page)).view;
        expect(width).toBeCloseTo(wide, 1);
        expect(height).toBeCloseTo(high, 1);
      }
      const pages = await readPages(bytes);
      expect(Math.min(...pages.flat().map((piece) => piece.size))).toBeGreaterThanOrEqual(9);
      expect(textOf(pages[0] ?? [])).toContain(language === 'de' ? 'Werkbankblatt' : 'Bench copy');
    },
  );

  it('crosses the box of what is done and names who did it', async () => {
    const [open, done] = await Promise.all(['', 'Runa'].map((by) => itemsOf(sheetOf({ done: by }))));
    const lines = (items: typeof open) => (items ?? []).filter((item) => item.kind === 'line').length;
    expect(lines(done)).toBe(lines(open) + 2);
  });

  it('crosses a box for each touch that is made, in the order of the bench, the last round in a circle too', async () => {
    const torque = torqueShape.parse({ pattern: 'ring', count: 5, sides: 2, stages: [{ Nm: 20 }], checkRound: true });
    const crossed = async (made: number) => {
      const items = await itemsOf(sheetOf({ torque, made }));
      const crosses = items.flatMap((item) =>
        item.kind === 'line' && item.dx === BOX - 7 && item.dy > 0 ? [item] : [],
      );
      return crosses.map(({ x, y }) => [Math.round(x), Math.round(y)]);
    };
    expect(await crossed(20)).toHaveLength(20);
    // Six made: the five of one side, then the first in the circle, which is the first in the order too.
    const six = await crossed(6);
    expect(six).toHaveLength(6);
    expect(new Set(six.slice(0, 5).map(([, y]) => y)).size).toBe(1);
    expect(six[5]?.[0]).toBe(six[0]?.[0]);
    // The seventh is the hole beside it, the fourth in the star of five: 1, 3, 5, 2, 4.
    const seven = await crossed(7);
    expect(seven.at(-1)?.[0]).toBe(six[3]?.[0]);
  });

  it('is the same bytes every time', async () => {
    expect(await workSheetPdf(SWAP_SHEET, FONTS)).toEqual(await workSheetPdf(SWAP_SHEET, FONTS));
  });
});

it.each([
  ['holes a degree apart', { pattern: 'angles', count: 5, degrees: [0, 1, 120, 121, 240] }],
  ['forty holes in a row', { pattern: 'rows', count: 40, rows: [40] }],
  ['thirty holes in each of two rows', { pattern: 'rows', count: 60, rows: [30, 30] }],
])('keeps the drawing of %s between the margins', async (_what, group) => {
  const torque = torqueShape.parse({ ...group, stages: [{ Nm: 40 }] });
  const { layout } = await workSheetLayout(sheetOf({ torque }), FONTS);
  const circles = layout.pages.flatMap(({ items }) => items).filter((item) => item.kind === 'circle');
  expect(circles.length).toBeGreaterThanOrEqual(torque.count);
  // 15 mm in points.
  const margin = (15 / 25.4) * 72;
  for (const { x, radius } of circles) {
    expect(x - radius).toBeGreaterThanOrEqual(margin);
    expect(x + radius).toBeLessThanOrEqual(layout.width - margin + 0.5);
  }
});

/** Any group that the job book takes. */
const anyTorque = fc
  .record({
    pattern: fc.constantFrom('ring', 'angles', 'pairs', 'rows', 'free' as const),
    half: fc.integer({ min: 1, max: 32 }),
    odd: fc.boolean(),
    sides: fc.integer({ min: 1, max: 4 }),
    rounds: fc.integer({ min: 1, max: 6 }),
    checkRound: fc.boolean(),
    wide: fc.integer({ min: 1, max: 12 }),
  })
  .map(({ pattern, half, odd, sides, rounds, checkRound, wide }) => {
    const count = pattern === 'pairs' ? half * 2 : Math.max(1, half * 2 - (odd ? 1 : 0));
    return torqueShape.parse({
      ...{ pattern, count, sides, checkRound },
      degrees: pattern === 'angles' ? Array.from({ length: count }, (_, at) => (at * 360) / count) : [],
      rows:
        pattern === 'rows'
          ? Array.from(
              { length: Math.min(16, Math.ceil(count / Math.max(wide, 4))) },
              (_, at, all = Math.max(wide, 4)) => Math.min(all, count - at * all),
            )
          : [],
      stages: Array.from({ length: rounds }, (_, at) => ({ Nm: 10 * (at + 1) })),
    });
  });

it('has one box for every touch of the wrench that the bench asks for, on the page, whatever the group', async () => {
  await fc.assert(
    fc.asyncProperty(anyTorque, async (torque) => {
      const { layout } = await workSheetLayout(sheetOf({ torque }), FONTS);
      const items = layout.pages.flatMap((page) => page.items);
      // One more for the step itself.
      expect(boxesIn(items)).toBe(touchesOf(torque).length + 1);
      for (const item of items) {
        const [wide, high] =
          item.kind === 'circle'
            ? [item.radius, item.radius]
            : item.kind === 'frame'
              ? [item.width, item.height]
              : [0, 0];
        expect(item.x + wide).toBeLessThanOrEqual(layout.width);
        expect(item.y + high).toBeLessThanOrEqual(layout.height);
        expect(item.x).toBeGreaterThanOrEqual(0);
      }
    }),
    { numRuns: 60 },
  );
}, 60_000);
