import { expect, test } from 'vitest';
import { BOX, DRAWN_VIEWS, outlineOf } from '../../../core/car/outline.ts';
import { CAR_SHAPES } from '../../../core/car/outline-shapes.ts';

const all = CAR_SHAPES.flatMap((shape) => DRAWN_VIEWS.map((view) => [shape, view] as const));

test.each(all)('a %s from %s lies within its box and fills most of its length', (shape, view) => {
  const { width, height } = BOX[view];
  const points = outlineOf(shape, view).flat();
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  expect(Math.min(...xs)).toBeGreaterThanOrEqual(0);
  expect(Math.max(...xs)).toBeLessThanOrEqual(width);
  expect(Math.min(...ys)).toBeGreaterThanOrEqual(0);
  expect(Math.max(...ys)).toBeLessThanOrEqual(height);
  expect(Math.max(...xs) - Math.min(...xs)).toBeGreaterThan(width * 0.9);
});

test('from above both sides are the same; the right side is the left one, mirrored', () => {
  const above = outlineOf('estate', 'top').flat();
  // Points are rounded to tenths.
  for (const [x, y] of above)
    expect(
      above.some(([u, v]) => Math.hypot(u - x, v - (420 - y)) < 0.2),
      `${x} ${y}`,
    ).toBe(true);
  const [left, right] = [outlineOf('van', 'left').flat(), outlineOf('van', 'right').flat()];
  expect(right.map(([x, y]) => [Math.round((1000 - x) * 10) / 10, y])).toEqual(left);
});

test('the body of a side is closed: it ends where it began', () => {
  for (const shape of CAR_SHAPES) {
    const [body = []] = outlineOf(shape, 'left');
    expect(body.at(-1)).toEqual(body[0]);
  }
});
