/**
 * A JPEG without what a camera wrote into it beside the picture (place, time, its own number): application segments but
 * JFIF's and Adobe's, and comments (ITU-T T.81, B.2.4). Papers that leave the house carry the picture alone; how it is
 * turned is told apart from it. Bytes that are no JPEG come back as they are.
 */
export function bareJpeg(bytes: Uint8Array): Uint8Array {
  if (bytes[0] !== 0xff || bytes[1] !== 0xd8) return bytes;
  const kept: Uint8Array[] = [bytes.subarray(0, 2)];
  let at = 2;
  while (bytes[at] === 0xff && at + 4 <= bytes.length) {
    const marker = bytes[at + 1] ?? 0;
    // From the first scan on nothing of that kind comes.
    if (marker === 0xda) break;
    const end = at + 2 + ((bytes[at + 2] ?? 0) << 8) + (bytes[at + 3] ?? 0);
    const beside = (marker >= 0xe1 && marker <= 0xef && marker !== 0xee) || marker === 0xfe;
    if (!beside) kept.push(bytes.subarray(at, end));
    at = end;
  }
  kept.push(bytes.subarray(at));
  const whole = new Uint8Array(kept.reduce((length, part) => length + part.length, 0));
  let to = 0;
  for (const part of kept) {
    whole.set(part, to);
    to += part.length;
  }
  return whole;
}
