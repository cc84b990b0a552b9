export type Encoding = 'UTF-8' | 'UTF-16' | 'windows-1252';

/** How many bytes are looked at to tell UTF-16 without a mark of its own. */
const LOOKED_AT = 4096;

/**
 * The text of a file of unknown encoding: by its byte order mark; else UTF-16 where every other byte is nought; else UTF-8
 * where it is well-formed; else windows-1252, which every byte fits. Labels as in the WHATWG Encoding Standard.
 */
export function decodeText(bytes: Uint8Array): { readonly text: string; readonly encoding: Encoding } {
  const [a, b] = bytes;
  if (a === 0xff && b === 0xfe) return utf16(bytes, 'utf-16le');
  if (a === 0xfe && b === 0xff) return utf16(bytes, 'utf-16be');
  const { even, odd, pairs } = noughts(bytes.subarray(0, LOOKED_AT));
  if (pairs > 1 && odd > pairs / 2 && even === 0) return utf16(bytes, 'utf-16le');
  if (pairs > 1 && even > pairs / 2 && odd === 0) return utf16(bytes, 'utf-16be');
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), encoding: 'UTF-8' };
  } catch {
    return { text: new TextDecoder('windows-1252').decode(bytes), encoding: 'windows-1252' };
  }
}

const utf16 = (bytes: Uint8Array, label: string) =>
  ({ text: new TextDecoder(label).decode(bytes), encoding: 'UTF-16' }) as const;

/** Bytes that are nought, at even and at odd places. */
function noughts(bytes: Uint8Array): { even: number; odd: number; pairs: number } {
  let even = 0;
  let odd = 0;
  bytes.forEach((byte, at) => {
    if (byte !== 0) return;
    if (at % 2 === 0) even += 1;
    else odd += 1;
  });
  return { even, odd, pairs: bytes.length >> 1 };
}
