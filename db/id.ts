import { randomBytes } from 'node:crypto';

let lastAt = 0;
let counter = 0;

/**
 * A UUIDv7 (RFC 9562): 48 bits of milliseconds, then a 12-bit counter within the millisecond, so that ids made by
 * this process sort in the order they were made, then 62 random bits.
 */
export function newId(now: number = Date.now()): string {
  if (now > lastAt) {
    lastAt = now;
    counter = 0;
  } else {
    counter += 1;
    if (counter > 0xfff) {
      lastAt += 1;
      counter = 0;
    }
  }
  const bytes = randomBytes(16);
  bytes.writeUIntBE(lastAt, 0, 6);
  bytes[6] = 0x70 | (counter >> 8);
  bytes[7] = counter & 0xff;
  bytes[8] = 0x80 | ((bytes[8] ?? 0) & 0x3f);
  const hex = bytes.toString('hex');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
}
