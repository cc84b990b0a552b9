/** The most that the shop takes, in bytes: as in the contract, whose file would bring its schemas into the window. */
export const MOST_BYTES = 8_000_000;
const KEPT: ReadonlySet<string> = new Set(['image/jpeg', 'image/png', 'image/webp']);
/** The longer side of a photo that is made smaller, in pixels. */
const LONGEST = 2800;

function dataUrl(blob: Blob): Promise<string> {
  return new Promise((ok, fail) => {
    const reader = new FileReader();
    reader.onload = () => ok(String(reader.result));
    reader.onerror = () => fail(reader.error);
    reader.readAsDataURL(blob);
  });
}

async function smaller(file: File): Promise<Blob | null> {
  const picture = await createImageBitmap(file);
  const scale = Math.min(1, LONGEST / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(picture.width * scale);
  canvas.height = Math.round(picture.height * scale);
  canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  return new Promise((ok) => canvas.toBlob(ok, 'image/jpeg', 0.85));
}

/**
 * A picture from the camera or a file, as a data address that holds JPEG, PNG or WebP within the shop's limit. One that is
 * too large, or of another kind that this browser can draw, becomes a JPEG; null where it is no picture.
 */
export async function readPhoto(file: File): Promise<string | null> {
  try {
    const kept = KEPT.has(file.type) && file.size <= MOST_BYTES ? file : await smaller(file);
    return kept === null || kept.size > MOST_BYTES ? null : await dataUrl(kept);
  } catch {
    return null;
  }
}

/** What the shop wants of a data address: the base64 alone. */
export const base64Of = (address: string): string => address.slice(address.indexOf(',') + 1);
