import { ABOVE, type CarShape, SIDE } from './outline-shapes.ts';

/** The sides of a car that are drawn. */
export const DRAWN_VIEWS = ['top', 'left', 'right'] as const;
export type DrawnView = (typeof DRAWN_VIEWS)[number];

export type Point = readonly [x: number, y: number];
/** Points that are joined by straight lines. */
export type Line = readonly Point[];

/** Width and height of a drawing in its own units; marks count in thousandths of either. */
export const BOX: Readonly<Record<DrawnView, { readonly width: number; readonly height: number }>> = {
  top: { width: 1000, height: 420 },
  left: { width: 1000, height: 360 },
  right: { width: 1000, height: 360 },
};

/** Straight pieces that stand for one curve: finer than anybody sees at the size of a page. */
const PIECES = 14;

/** A path of M, L and C as points along it. */
function along(path: string): Line {
  const points: Point[] = [];
  for (const [, letter, figures = ''] of path.matchAll(/([MLC])([^MLC]*)/g)) {
    const at = figures.trim().split(/\s+/).map(Number);
    const point = (n: number): Point => [at[2 * n] ?? 0, at[2 * n + 1] ?? 0];
    const start = points.at(-1) ?? point(0);
    if (letter !== 'C') points.push(point(0));
    else
      for (let piece = 1; piece <= PIECES; piece += 1)
        points.push(onCurve([start, point(0), point(1), point(2)], piece / PIECES));
  }
  return points;
}

/** A point of a cubic Bézier curve, `t` from 0 to 1, by Bernstein's polynomials. */
function onCurve([a, b, c, d]: readonly [Point, Point, Point, Point], t: number): Point {
  const on = (axis: 0 | 1) =>
    (1 - t) ** 3 * a[axis] + 3 * (1 - t) ** 2 * t * b[axis] + 3 * (1 - t) * t ** 2 * c[axis] + t ** 3 * d[axis];
  return [on(0), on(1)];
}

const ROUND = 40;

function circle(x: number, y: number, radius: number): Line {
  return Array.from({ length: ROUND + 1 }, (_, at): Point => {
    const angle = (at % ROUND) * ((2 * Math.PI) / ROUND);
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });
}

/** One half of a car from above is drawn; the other is its mirror image over this line. */
const MIDDLE = BOX.top.height / 2;

function fromAbove(shape: CarShape): Line[] {
  const { screen, rear, seams, nose } = ABOVE[shape];
  const [foot, head] = screen;
  const [back, tail] = rear;
  const half = [
    `M18 210 C18 120 ${30 + nose / 6} 66 ${40 + nose} 56 C320 44 700 44 880 54 C950 60 982 120 982 210`,
    `M${foot} 92 L${head} 118 L${back} 118 L${tail} 92`,
    `M${foot} 92 C${foot - 26} 140 ${foot - 30} 180 ${foot - 30} 210`,
    `M${head} 118 C${head - 16} 150 ${head - 18} 180 ${head - 18} 210`,
    `M${back} 118 C${back + 10} 150 ${back + 12} 180 ${back + 12} 210`,
    `M${tail} 92 C${tail + 12} 140 ${tail + 14} 180 ${tail + 14} 210`,
    `M${foot + 18} 80 L${tail - 14} 80`,
    ...seams.map((x) => `M${x} 49 L${x + 8} 92`),
    `M${foot + 12} 50 L${foot + 2} 22 L${foot + 34} 22 L${foot + 40} 49`,
    'M150 46 L150 34 L262 34 L262 47',
    'M738 47 L738 34 L850 34 L850 46',
    'M50 140 C58 114 76 98 114 92 L100 118 L54 152',
    'M964 144 L930 122 L916 84',
  ].map(along);
  return half.flatMap((line) => [line, line.map(([x, y]): Point => [x, 2 * MIDDLE - y])]);
}

const WHEEL = { y: 282, radius: 60, arch: 74 } as const;

function fromSide(shape: CarShape): Line[] {
  const { wheels, over, on } = SIDE[shape];
  const { y, radius, arch } = WHEEL;
  const high = y - arch * 1.25;
  const archOver = (x: number) => `L${x + arch} ${y} C${x + arch} ${high} ${x - arch} ${high} ${x - arch} ${y}`;
  const [front, back] = wheels;
  const [start = [0, 0]] = along(over);
  const body = `${over} ${archOver(back)} ${archOver(front)} L${start.join(' ')}`;
  return [...[body, ...on].map(along), ...wheels.flatMap((x) => [circle(x, y, radius), circle(x, y, radius * 0.6)])];
}

const whole = ([x, y]: Point): Point => [Math.round(x * 10) / 10, Math.round(y * 10) / 10];

/** The lines of a car in the units of {@link BOX}, the same for a screen and for paper. The right side is the left, mirrored. */
export function outlineOf(shape: CarShape, view: DrawnView): Line[] {
  const lines = (view === 'top' ? fromAbove(shape) : fromSide(shape)).map((line) => line.map(whole));
  return view === 'right' ? lines.map((line) => line.map(([x, y]): Point => [BOX.right.width - x, y])) : lines;
}
