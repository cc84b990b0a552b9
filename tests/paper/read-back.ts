import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { createCanvas, type SKRSContext2D } from '@napi-rs/canvas';
import { getDocument, type PDFDocumentProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** Reads papers back with pdf.js, which shares no code with what wrote them. */

const root = dirname(createRequire(import.meta.url).resolve('pdfjs-dist/package.json'));

export async function openPdf(bytes: Uint8Array): Promise<PDFDocumentProxy> {
  return getDocument({
    data: bytes.slice(),
    standardFontDataUrl: `${join(root, 'standard_fonts')}/`,
    useSystemFonts: false,
    verbosity: 0,
  }).promise;
}

export interface ReadText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly size: number;
}

/** Pieces of text of each page with their places in points from the bottom left corner. */
export async function readPages(bytes: Uint8Array): Promise<readonly (readonly ReadText[])[]> {
  const pdf = await openPdf(bytes);
  const pages: ReadText[][] = [];
  for (let number = 1; number <= pdf.numPages; number++) {
    const content = await (await pdf.getPage(number)).getTextContent();
    const items: ReadText[] = [];
    for (const item of content.items) {
      if (!('str' in item) || item.str.trim() === '') continue;
      const transform: readonly number[] = item.transform;
      items.push({
        text: item.str,
        x: transform[4] ?? 0,
        y: transform[5] ?? 0,
        width: item.width,
        size: transform[0] ?? 0,
      });
    }
    pages.push(items);
  }
  return pages;
}

/** All text of a page, pieces on one line joined by a space, non-breaking spaces as plain ones. */
export function textOf(page: readonly ReadText[]): string {
  const rows = new Map<number, string[]>();
  for (const item of page) {
    const row = Math.round(item.y * 2);
    rows.set(row, [...(rows.get(row) ?? []), item.text]);
  }
  return [...rows.values()].map((row) => row.join(' ').replace(/[\s\u00a0]+/g, ' ')).join('\n');
}

/** Darkness of every pixel of a page, 0 white to 1 black, at `scale` pixels a point. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  readonly ink: Float32Array;
}

export async function rasterise(bytes: Uint8Array, number: number, scale: number): Promise<Raster> {
  const page = await (await openPdf(bytes)).getPage(number);
  const viewport = page.getViewport({ scale });
  return drawn(Math.ceil(viewport.width), Math.ceil(viewport.height), async (context) => {
    const target = context as unknown as CanvasRenderingContext2D;
    await page.render({ canvas: null, canvasContext: target, viewport }).promise;
  });
}

export async function drawn(
  width: number,
  height: number,
  draw: (context: SKRSContext2D) => void | Promise<void>,
): Promise<Raster> {
  const canvas = createCanvas(width, height);
  const context = canvas.getContext('2d');
  context.fillStyle = '#fff';
  context.fillRect(0, 0, width, height);
  await draw(context);
  const { data } = context.getImageData(0, 0, width, height);
  const ink = new Float32Array(width * height);
  for (let index = 0; index < ink.length; index++) {
    const at = index * 4;
    ink[index] = 1 - ((data[at] ?? 255) + (data[at + 1] ?? 255) + (data[at + 2] ?? 255)) / 765;
  }
  return { width, height, ink };
}

/** Sum of darkness in a rectangle of pixels. */
export function inkIn(raster: Raster, left: number, top: number, right: number, bottom: number): number {
  let total = 0;
  for (let y = Math.max(0, Math.floor(top)); y < Math.min(raster.height, Math.ceil(bottom)); y++)
    for (let x = Math.max(0, Math.floor(left)); x < Math.min(raster.width, Math.ceil(right)); x++)
      total += raster.ink[y * raster.width + x] ?? 0;
  return total;
}
