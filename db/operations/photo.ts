import { PHOTO_MOST, PHOTO_MOST_PIXELS } from '../../core/contract/photo.ts';
import { readPicture } from '../../core/photo/picture.ts';
import type { Context, Handlers } from '../context.ts';
import { keepPhoto, readPhoto } from '../file/photo-file.ts';
import { newId } from '../id.ts';
import { checkOf, photosOf } from '../order/photos.ts';
import { signedIn } from '../people.ts';
import { badInput, held, notFound } from '../refusal.ts';
import type { PhotoRow, PhotoUseRow } from '../tables.ts';

/** The bytes of a picture and what they are. Throws bad-input for what is none, or is too large. */
function pictureIn(base64: string) {
  const bytes = Buffer.from(base64, 'base64');
  if (bytes.toString('base64') !== base64) throw badInput('base64', 'wrong-form');
  if (bytes.length > PHOTO_MOST) throw badInput('base64', 'photo-too-large', { most: PHOTO_MOST / 1_000_000 });
  const picture = readPicture(bytes);
  if (!picture || picture.width * picture.height > PHOTO_MOST_PIXELS) throw badInput('base64', 'not-a-photo');
  return { bytes, picture };
}

async function photo(context: Context, id: string): Promise<PhotoRow> {
  const row = await context.tx.selectFrom('photo').selectAll().where('id', '=', id).executeTakeFirst();
  if (!row) throw notFound('photo', id);
  return row;
}

const useOf = ({ printed, taken_out }: PhotoUseRow) => ({ printed: printed === 1, takenOut: taken_out === 1 });

export const photoHandlers: Handlers = {
  'photo.keep': async ({ orderId, of, words, base64 }, context) => {
    await checkOf(context, orderId, of);
    const { bytes, picture } = pictureIn(base64);
    const hash = keepPhoto(context.folder, picture.kind, bytes);
    const step = of.what === 'step' ? of.step : null;
    const before = await context.tx
      .selectFrom('photo')
      .select('id')
      .where('work_order_id', '=', orderId)
      .where('hash', '=', hash)
      .where('of_what', '=', of.what)
      .where('of_id', '=', of.id)
      .where('step', 'is', step)
      .executeTakeFirst();
    if (before) return { id: before.id, hash, again: true };
    const id = newId();
    await context.write.insert('photo', {
      id,
      work_order_id: orderId,
      hash,
      kind: picture.kind,
      size: bytes.length,
      of_what: of.what,
      of_id: of.id,
      step,
      words,
      person_id: signedIn(context).id,
      at: context.now,
    });
    await context.write.insert('photo_use', { id, revision: 1, printed: 0, taken_out: 0 });
    return { id, hash, again: false };
  },
  'photo.read': async ({ id }, context) => {
    const row = await photo(context, id);
    const bytes = readPhoto(context.folder, row.hash, row.kind);
    return { id, kind: row.kind, words: row.words, at: row.at, base64: bytes.toString('base64') };
  },
  'photo.list': async (whose, context) => ({ rows: await photosOf(context, whose) }),
  'photo.print': async ({ id, revision, printed }, context) => {
    const { kind } = await photo(context, id);
    if (printed && kind === 'webp') throw held([{ what: 'photo-not-printable', with: {} }]);
    const patch = { printed: printed ? (1 as const) : (0 as const) };
    return { id, revision: await context.write.edit('photo_use', id, revision, patch, { printed }, useOf) };
  },
  'photo.takeOut': async ({ id, revision, takenOut }, context) => {
    const patch = { taken_out: takenOut ? (1 as const) : (0 as const) };
    return { id, revision: await context.write.edit('photo_use', id, revision, patch, { takenOut }, useOf) };
  },
};
