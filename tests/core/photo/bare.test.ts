import { createCanvas, loadImage } from '@napi-rs/canvas';
import { expect, test } from 'vitest';
import { bareJpeg } from '../../../core/photo/bare.ts';
import { withOrientation } from './exif.ts';

const canvas = createCanvas(48, 32);
const pen = canvas.getContext('2d');
pen.fillStyle = '#c33';
pen.fillRect(5, 5, 20, 9);
const jpeg = canvas.toBuffer('image/jpeg', 90);

/** Its pixels, as another program shows them. */
async function pixels(bytes: Uint8Array): Promise<Buffer> {
  const shown = createCanvas(48, 32);
  shown.getContext('2d').drawImage(await loadImage(Buffer.from(bytes)), 0, 0);
  return Buffer.from(shown.getContext('2d').getImageData(0, 0, 48, 32).data);
}

test('what a camera wrote beside the picture goes, the picture stays to the last pixel', async () => {
  const said = new TextEncoder().encode('at 52.5 N');
  const comment = new Uint8Array([0xff, 0xfe, 0, said.length + 2, ...said]);
  const full = withOrientation(new Uint8Array([...jpeg.subarray(0, 2), ...comment, ...jpeg.subarray(2)]), 1, 'II');
  const bare = bareJpeg(full);
  const text = Buffer.from(bare).toString('latin1');
  expect(text).not.toContain('Exif');
  expect(text).not.toContain('52.5');
  expect((await pixels(bare)).equals(await pixels(jpeg))).toBe(true);
});

test('a bare one, and what is no JPEG, stay as they are', () => {
  expect(Buffer.from(bareJpeg(bareJpeg(jpeg))).equals(Buffer.from(bareJpeg(jpeg)))).toBe(true);
  const png = canvas.toBuffer('image/png');
  expect(bareJpeg(png)).toBe(png);
  expect([...bareJpeg(new Uint8Array([0xff, 0xd8, 0xff, 0xe1, 0xff]))]).toEqual([0xff, 0xd8, 0xff, 0xe1, 0xff]);
});
