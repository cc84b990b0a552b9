/** The longest side a mark is kept at, in pixels: sharp at 14 mm on paper, and small in the shop's settings. */
const LONGEST = 360;
const MOST_SIGNS = 270_000;

/**
 * A picture file as a small PNG in base64, whatever the browser can read (PNG, JPEG). Null where it is no picture, or
 * cannot be made small enough.
 */
export async function readLogo(file: Blob): Promise<string | null> {
  let picture: ImageBitmap;
  try {
    picture = await createImageBitmap(file);
  } catch {
    return null;
  }
  for (let longest = LONGEST; longest >= 90; longest /= 2) {
    const base64 = drawn(picture, longest);
    if (base64 !== null && base64.length <= MOST_SIGNS) return base64;
  }
  return null;
}

function drawn(picture: ImageBitmap, longest: number): string | null {
  const scale = Math.min(1, longest / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  const [, base64] = canvas.toDataURL('image/png').split(',');
  return base64 ?? null;
}
