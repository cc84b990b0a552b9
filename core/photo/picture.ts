/** How a stored picture has to be turned clockwise to stand upright. */
export type Turn = 0 | 90 | 180 | 270;

/** A picture as its own bytes describe it; width and height in pixels, as they are stored. */
export interface Picture {
  readonly kind: 'jpeg' | 'png' | 'webp';
  readonly width: number;
  readonly height: number;
  readonly turn: Turn;
}

/**
 * What kind of picture some bytes are, known by their content: JPEG (ITU-T T.81, annex B), PNG (W3C PNG, 5.2 and 11.2.2)
 * or WebP (RFC 9649). Null for anything else, or where no size can be read.
 */
export function readPicture(bytes: Uint8Array): Picture | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  try {
    const found = jpeg(view) ?? png(view) ?? webp(view);
    return found !== null && found.width > 0 && found.height > 0 ? found : null;
  } catch (fault) {
    // Read past the end: cut off, so no picture.
    if (fault instanceof RangeError) return null;
    throw fault;
  }
}

const text = (view: DataView, at: number, length: number) =>
  String.fromCharCode(...Array.from({ length }, (_, index) => view.getUint8(at + index)));

function png(view: DataView): Picture | null {
  if (view.getUint32(0) !== 0x89504e47 || view.getUint32(4) !== 0x0d0a1a0a || text(view, 12, 4) !== 'IHDR') return null;
  return { kind: 'png', width: view.getUint32(16), height: view.getUint32(20), turn: 0 };
}

function webp(view: DataView): Picture | null {
  if (text(view, 0, 4) !== 'RIFF' || text(view, 8, 4) !== 'WEBP') return null;
  const chunk = text(view, 12, 4);
  const size = (width: number, height: number): Picture => ({ kind: 'webp', width, height, turn: 0 });
  const low = (at: number) => view.getUint16(at, true);
  if (chunk === 'VP8X') {
    const less = (at: number) => low(at) + view.getUint8(at + 2) * 0x10000;
    return size(less(24) + 1, less(27) + 1);
  }
  if (chunk === 'VP8L') {
    const bits = view.getUint32(21, true);
    return view.getUint8(20) === 0x2f ? size((bits & 0x3fff) + 1, ((bits >>> 14) & 0x3fff) + 1) : null;
  }
  // The start code of a key frame, then 14 bits each.
  if (chunk !== 'VP8 ' || view.getUint16(23) !== 0x9d01 || view.getUint8(25) !== 0x2a) return null;
  return size(low(26) & 0x3fff, low(28) & 0x3fff);
}

function jpeg(view: DataView): Picture | null {
  if (view.getUint16(0) !== 0xffd8) return null;
  let turn: Turn = 0;
  let at = 2;
  for (;;) {
    if (view.getUint8(at) !== 0xff) return null;
    const marker = view.getUint8(at + 1);
    // Fill bytes before a marker.
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    // Start of frame, whatever its process: C0 to CF but for the tables C4 and CC and the reserved C8.
    if (marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker))
      return { kind: 'jpeg', width: view.getUint16(at + 7), height: view.getUint16(at + 5), turn };
    if (marker === 0xd9 || marker === 0xda) return null;
    const length = view.getUint16(at + 2);
    if (marker === 0xe1) turn = exifTurn(view, at + 4, at + 2 + length) ?? turn;
    at += 2 + length;
  }
}

/** Tag 274, orientation (Exif 2.3, 4.6.4 A); a mirrored picture is turned as if it were not. */
const TURNS: Readonly<Record<number, Turn>> = { 1: 0, 2: 0, 3: 180, 4: 180, 5: 90, 6: 90, 7: 270, 8: 270 };

/** The turn that a camera wrote down, in the first directory of its TIFF block; null where there is none. */
function exifTurn(view: DataView, from: number, end: number): Turn | null {
  if (end - from < 14 || text(view, from, 6) !== 'Exif\0\0') return null;
  const tiff = from + 6;
  const order = view.getUint16(tiff);
  if (order !== 0x4949 && order !== 0x4d4d) return null;
  const little = order === 0x4949;
  const directory = tiff + view.getUint32(tiff + 4, little);
  if (directory + 2 > end) return null;
  const entries = view.getUint16(directory, little);
  for (let entry = 0; entry < entries; entry += 1) {
    const at = directory + 2 + entry * 12;
    if (at + 12 > end) return null;
    if (view.getUint16(at, little) === 274) return TURNS[view.getUint16(at + 8, little)] ?? null;
  }
  return null;
}
