import { bothUnits, type Stage } from '../../../bench/stage.ts';
import { tighteningOrder } from '../../../bench/tightening.ts';
import { holesOf, touchesOf } from '../../../bench/torque-group.ts';
import type { WorkSheetWords } from '../../work-sheet-words.ts';
import { type Block, block, type Item, moved, SIZE, stacked } from '../block.ts';
import type { Shaper } from '../shape.ts';
import type { Span } from '../text.ts';
import { type BoltDrawing, boltDrawing, type Torque } from './bolts.ts';
import { BOX, box, centred, oneLine } from './marks.ts';

const GAP = 12;
const HEADING = 12;
const ROUND = BOX + 2.5;
/** Neighbours share their edge. */
const STEP = BOX - 1;

interface RoundsSetting {
  readonly shaper: Shaper;
  readonly sheet: WorkSheetWords;
  /** From the left end of the sheet. */
  readonly x: number;
  readonly width: number;
  /** Touches of the wrench that are made already, in their order. */
  readonly made: number;
}

const figure = (value: number, decimals: number): string => String(Number(value.toFixed(decimals)));

/** "30 N·m 22 lbf·ft", the first bold; as its source prints it where it prints both. */
function roundWords(stage: Stage): readonly Span[] {
  const both = bothUnits(stage);
  if (both === null) return 'degrees' in stage ? [{ text: `${stage.degrees}°`, style: 'bold' }] : [];
  const metres = `${figure(both.Nm, 1)}\u00a0N·m`;
  const feet = `${figure(both.lbfft, 'lbfft' in stage ? 1 : 0)}\u00a0lbf·ft`;
  const [first, second] = 'Nm' in stage ? [metres, feet] : [feet, metres];
  return [
    { text: `${first} `, style: 'bold' },
    { text: second, style: 'body' },
  ];
}

const boxOf = (side: number, round: number, bolt: number): string => `${side} ${round} ${bolt}`;

/** The boxes of so many touches, as the bench takes them; a bolt by its place in the order of tightening. */
function boxesMade(torque: Torque, made: number): ReadonlySet<string> {
  const order = tighteningOrder(holesOf(torque));
  return new Set(
    touchesOf(torque)
      .slice(0, made)
      .map(({ side, hole, stage, check }) =>
        boxOf(side, check ? torque.stages.length : stage, order.indexOf(hole) + 1),
      ),
  );
}

/** The drawing of a group and, beside or below it, a box for each bolt and round, in the order of tightening. */
export function torqueBlocks(torque: Torque, setting: RoundsSetting): readonly Block[] {
  const { shaper, sheet, x, width } = setting;
  const drawing = boltDrawing(shaper, torque, width);
  const names = [
    ...torque.stages.map(roundWords),
    ...(torque.checkRound ? [[{ text: sheet.circle, style: 'body' } as const]] : []),
  ];
  const label = Math.max(...names.map((name) => oneLine(shaper, name, SIZE.body, 0, 0).width)) + GAP;
  const made = boxesMade(torque, setting.made);
  const besideIt = drawing === null ? 0 : drawing.width + GAP;
  const boxesIn = (room: number) => Math.floor((room - label) / STEP);
  const beside = drawing !== null && boxesIn(width - besideIt) >= Math.min(torque.count, 8);
  const left = beside ? besideIt : 0;
  const most = Math.max(1, boxesIn(width - left));
  const grids: Grid[] = [];
  for (let side = 1; side <= torque.sides; side += 1)
    for (let from = 1; from <= torque.count; from += most)
      grids.push({ from, to: Math.min(torque.count, from + most - 1), side: torque.sides > 1 ? side : 0 });
  const wide = label + Math.min(most, torque.count) * STEP + GAP;
  const abreast = Math.max(1, Math.floor((width - left + GAP) / wide));
  const rows = Array.from({ length: Math.ceil(grids.length / abreast) }, (_, row) => {
    const inRow = grids.slice(row * abreast, (row + 1) * abreast);
    const items = inRow.flatMap((grid, at) =>
      gridItems({ ...setting, x: x + left + at * wide }, names, label, made, grid),
    );
    return block(HEADING + names.length * ROUND + 3, items);
  });
  if (drawing === null) return rows;
  return beside ? besideDrawing(drawing, x, rows) : [drawnBlock(drawing, x), ...rows];
}

const drawnBlock = (drawing: BoltDrawing, x: number): Block =>
  block(drawing.height + 4, moved(drawing.items, x, 0), { keep: true });

/** As many rows of boxes as stand beside the drawing with it, the others after. */
function besideDrawing(drawing: BoltDrawing, x: number, rows: readonly Block[]): readonly Block[] {
  let tall = rows[0]?.height ?? 0;
  let count = 1;
  for (const row of rows.slice(1)) {
    if (tall + row.height > drawing.height) break;
    tall += row.height;
    count += 1;
  }
  const height = Math.max(tall, drawing.height + 3);
  const items = [
    ...moved(drawing.items, x, (height - 3 - drawing.height) / 2),
    ...moved(stacked(rows.slice(0, count)).items, 0, (height - tall) / 2),
  ];
  return [block(height, items), ...rows.slice(count)];
}

/** Bolts of one side that stand in one row of boxes, by their place in the order; `side` 0 where there is one side. */
interface Grid {
  readonly from: number;
  readonly to: number;
  readonly side: number;
}

/** The boxes of some bolts on one side: their numbers on top, a row a round. */
function gridItems(
  { shaper, sheet, x }: RoundsSetting,
  names: readonly (readonly Span[])[],
  label: number,
  made: ReadonlySet<string>,
  { from, to, side }: Grid,
): readonly Item[] {
  const items: Item[] = [];
  const left = x + label;
  if (side > 0) items.push(oneLine(shaper, [{ text: sheet.side(side), style: 'body' }], SIZE.small, x, 9));
  for (let bolt = from; bolt <= to; bolt += 1)
    items.push(centred(shaper, String(bolt), left + (bolt - from) * STEP + BOX / 2, 9));
  names.forEach((name, round) => {
    const y = HEADING + round * ROUND;
    items.push(oneLine(shaper, name, SIZE.body, x, y + 11.5));
    for (let bolt = from; bolt <= to; bolt += 1)
      items.push(...box(left + (bolt - from) * STEP, y, made.has(boxOf(Math.max(1, side), round, bolt))));
  });
  return items;
}
