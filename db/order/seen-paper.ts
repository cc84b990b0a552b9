import type { PaperMoment } from '../../core/paper/parts.ts';
import type { PaperPicture, PaperSeenRow, SampleLabel, SeenPaper } from '../../core/paper/seen.ts';
import { bareJpeg } from '../../core/photo/bare.ts';
import { readPicture } from '../../core/photo/picture.ts';
import { civilDateOf, instantToWall } from '../../core/time/instant.ts';
import type { Context, Settings } from '../context.ts';
import { readPhoto } from '../file/photo-file.ts';
import { settingsOf } from '../people.ts';
import type { CheckDone } from './checks.ts';
import { commonPaper, settingsFor } from './document.ts';
import { type Loaded, loadOrder } from './load.ts';
import { drawnOf, type SampleFound } from './samples.ts';

function moment(context: Context, at: number): PaperMoment {
  const { date, time } = instantToWall(at, settingsOf(context).zone);
  return { date, time: time.slice(0, 5) };
}

/** The photos of an order that are to be printed, oldest first, by the id of what they are of. Throws ShopDamaged. */
async function printedPhotos(context: Context, orderId: string) {
  const rows = await context.tx
    .selectFrom('photo')
    .innerJoin('photo_use', 'photo_use.id', 'photo.id')
    .innerJoin('person', 'person.id', 'photo.person_id')
    .selectAll('photo')
    .select('person.name')
    .where('work_order_id', '=', orderId)
    .where('printed', '=', 1)
    .where('photo_use.taken_out', '=', 0)
    .orderBy('photo.at')
    .orderBy('photo.id')
    .execute();
  return rows.flatMap((row) => {
    const bytes = readPhoto(context.folder, row.hash, row.kind);
    const found = readPicture(bytes);
    if (found === null || found.kind === 'webp') return [];
    const { width, height, turn, kind } = found;
    const base64 = Buffer.from(bareJpeg(bytes)).toString('base64');
    const said = { words: row.words, taken: moment(context, row.at), by: row.name };
    const picture: PaperPicture = { kind, width, height, turn, base64, ...said };
    return [{ of: row.of_id, picture }];
  });
}

/** What every such paper has; by the settings of whoever it is for. */
function common(context: Context, loaded: Loaded, settings: Settings) {
  const { order, customer, car } = loaded;
  const of = { number: order.number, orderNumber: order.number, billTo: customer, car, po: '' };
  const paper = commonPaper(context, settings, of);
  return {
    practice: paper.practice,
    language: paper.language,
    ...(paper.dateForm === undefined ? {} : { dateForm: paper.dateForm }),
    size: paper.size,
    currency: paper.currency,
    garage: paper.garage,
    orderNumber: order.number,
    customer: customer.name,
    car: paper.car ?? { name: car.words, plate: car.plate, vin: car.vin },
    mileage: { unit: car.unit, reading: order.mileage_in },
  };
}

/** A list that was gone through, for the customer, with the printed photos of what it found. Throws not-found. */
export async function checkPaper(context: Context, orderId: string, done: CheckDone): Promise<SeenPaper> {
  const photos = await printedPhotos(context, orderId);
  const loaded = await loadOrder(context, orderId);
  return {
    ...common(context, loaded, settingsFor(settingsOf(context), loaded.customer)),
    title: done.title,
    by: done.by,
    at: moment(context, done.at),
    madeAt: done.at,
    rows: done.answers.map(
      ({ words, place, seen, said, value, measure, findingId }): PaperSeenRow => ({
        seen,
        words,
        place,
        said,
        measured: measure === null || value === null ? null : { ...measure, value },
        pictures: photos.filter(({ of }) => of === findingId).map(({ picture }) => picture),
      }),
    ),
    pictures: [],
  };
}

/** The printed photos of an order and nothing else. Throws not-found. */
export async function photosPaper(context: Context, orderId: string): Promise<SeenPaper> {
  const loaded = await loadOrder(context, orderId);
  const pictures = (await printedPhotos(context, orderId)).map(({ picture }) => picture);
  const at = moment(context, context.now);
  const theirs = settingsFor(settingsOf(context), loaded.customer);
  return { ...common(context, loaded, theirs), title: '', by: '', at, madeAt: context.now, rows: [], pictures };
}

/** What stands on the bottle of a sample. Throws not-found. */
export async function sampleLabel(context: Context, sample: SampleFound): Promise<SampleLabel> {
  const {
    practice,
    language,
    currency,
    garage,
    car,
    dateForm = 'language',
  } = common(context, await loadOrder(context, sample.work_order_id), settingsOf(context));
  const { unit, fluid, distance, mileage } = drawnOf(sample);
  return {
    ...{ practice, language, dateForm, currency, garage: garage.name, label: sample.label, car },
    ...{ unit: unit.name, serial: unit.serial, fluid, distance, mileage },
    distanceUnit: sample.distance_unit,
    drawn: civilDateOf(sample.drawn_at, settingsOf(context).zone),
    by: sample.name,
    madeAt: sample.drawn_at,
  };
}
