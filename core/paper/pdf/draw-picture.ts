import type { PDFDocument, PDFPage } from '@cantoo/pdf-lib';
import type { PictureItem } from './block.ts';

/** Draws a photo from the left of its place, upright and with its own proportions. `height` is the page's, in points. */
export async function drawPicture(
  lib: typeof import('@cantoo/pdf-lib'),
  pdf: PDFDocument,
  page: PDFPage,
  item: PictureItem,
  height: number,
): Promise<void> {
  const { picture } = item;
  const image = picture.kind === 'png' ? await pdf.embedPng(picture.base64) : await pdf.embedJpg(picture.base64);
  const lies = picture.turn === 90 || picture.turn === 270;
  const [across, up] = lies ? [picture.height, picture.width] : [picture.width, picture.height];
  const scale = Math.min(item.width / across, item.height / up);
  const [wide, tall] = [across * scale, up * scale];
  const left = item.x;
  const low = height - item.y - (item.height + tall) / 2;
  // A PDF turns a picture about its lower left corner, against the clock.
  const corner = {
    0: [left, low],
    90: [left, low + tall],
    180: [left + wide, low + tall],
    270: [left + wide, low],
  } as const;
  const [x, y] = corner[picture.turn];
  const size = { width: picture.width * scale, height: picture.height * scale };
  page.drawImage(image, { x, y, ...size, rotate: lib.degrees(-picture.turn) });
}
