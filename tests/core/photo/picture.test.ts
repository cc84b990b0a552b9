import { createCanvas } from '@napi-rs/canvas';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readPicture } from '../../../core/photo/picture.ts';
import { withOrientation } from './exif.ts';

const drawn = (width: number, height: number) => {
  const canvas = createCanvas(width, height);
  canvas.getContext('2d').fillRect(0, 0, width / 2, height / 3);
  return canvas;
};

test('pictures that another program wrote are known by their content, with their size', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 300 }), fc.integer({ min: 1, max: 300 }), (width, height) => {
      const canvas = drawn(width, height);
      const size = { width, height, turn: 0 };
      expect(readPicture(canvas.toBuffer('image/jpeg', 70))).toEqual({ kind: 'jpeg', ...size });
      expect(readPicture(canvas.toBuffer('image/png'))).toEqual({ kind: 'png', ...size });
      expect(readPicture(canvas.toBuffer('image/webp', 70))).toEqual({ kind: 'webp', ...size });
      // From quality 100 on it is written without loss, in a chunk of another form.
      expect(readPicture(canvas.toBuffer('image/webp', 100))).toEqual({ kind: 'webp', ...size });
    }),
    { numRuns: 25 },
  );
});

test.each([
  [1, 0],
  [3, 180],
  [6, 90],
  [8, 270],
])('orientation %i of a camera stands upright when it is turned by %i', (orientation, turn) => {
  const jpeg = drawn(40, 30).toBuffer('image/jpeg', 70);
  for (const order of ['II', 'MM'] as const)
    expect(readPicture(withOrientation(jpeg, orientation, order))).toEqual({
      kind: 'jpeg',
      width: 40,
      height: 30,
      turn,
    });
});

test('an orientation that does not exist turns nothing', () => {
  const jpeg = drawn(40, 30).toBuffer('image/jpeg', 70);
  expect(readPicture(withOrientation(jpeg, 9, 'II'))?.turn).toBe(0);
});

test('anything else, and a picture cut off before its size, is none', () => {
  const png = drawn(40, 30).toBuffer('image/png');
  expect(readPicture(png.subarray(0, 20))).toBeNull();
  const jpeg = drawn(40, 30).toBuffer('image/jpeg', 70);
  expect(readPicture(jpeg.subarray(0, 30))).toBeNull();
  for (const text of ['', 'GIF89a', '<svg/>', '%PDF-1.7', 'RIFF....WAVEfmt '])
    expect(readPicture(new TextEncoder().encode(text))).toBeNull();
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => {
      expect(() => readPicture(bytes)).not.toThrow();
    }),
  );
});

test('what is after the start of a JPEG, whatever it is, is read to its end or refused', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => {
      expect(() => readPicture(new Uint8Array([0xff, 0xd8, 0xff, 0xe1, ...bytes]))).not.toThrow();
    }),
  );
});
