/** A JPEG with an Exif block that says how it is turned (Exif 2.3: tag 274, type SHORT), in either byte order. */
export function withOrientation(jpeg: Uint8Array, orientation: number, order: 'II' | 'MM'): Uint8Array {
  const little = order === 'II';
  const block = new DataView(new ArrayBuffer(6 + 8 + 2 + 2 * 12 + 4));
  const text = (at: number, said: string) => {
    for (const [n, sign] of [...said].entries()) block.setUint8(at + n, sign.charCodeAt(0));
  };
  text(0, 'Exif');
  text(6, order);
  block.setUint16(8, 42, little);
  block.setUint32(10, 8, little);
  block.setUint16(14, 2, little);
  // A tag before it: 256, image width.
  for (const [at, tag, value] of [
    [16, 256, 40],
    [28, 274, orientation],
  ] as const) {
    block.setUint16(at, tag, little);
    block.setUint16(at + 2, 3, little);
    block.setUint32(at + 4, 1, little);
    block.setUint16(at + 8, value, little);
  }
  const length = block.byteLength + 2;
  const head = [0xff, 0xd8, 0xff, 0xe1, length >> 8, length & 0xff];
  return new Uint8Array([...head, ...new Uint8Array(block.buffer), ...jpeg.slice(2)]);
}
