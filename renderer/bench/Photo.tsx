import { useEffect, useState } from 'react';
import { ask } from '../state/call.ts';
import { t } from '../words/t.ts';

/** Addresses of photos that were read, by id, the one read last at the end: a photo never changes, so none is asked twice. */
const read = new Map<string, string>();
/** A phone's pictures are large: no more than these stay. */
const MOST_KEPT = 40;

async function addressOf(id: string): Promise<string | null> {
  const kept = read.get(id);
  if (kept !== undefined) return kept;
  const answer = await ask('photo.read', { id });
  if (!answer.ok) return null;
  const address = `data:image/${answer.output.kind};base64,${answer.output.base64}`;
  read.set(id, address);
  for (const oldest of [...read.keys()].slice(0, read.size - MOST_KEPT)) read.delete(oldest);
  return address;
}

/** A photo of the shop, drawn when its bytes are here. */
export function Photo({ id, words }: { readonly id: string; readonly words: string }) {
  const [address, setAddress] = useState<string | null>(read.get(id) ?? null);
  useEffect(() => {
    let here = true;
    void addressOf(id).then((found) => here && setAddress(found));
    return () => {
      here = false;
    };
  }, [id]);
  if (address === null) return <div className="photo-coming" />;
  return <img src={address} alt={words === '' ? t('bay.photoNoWords') : words} />;
}
