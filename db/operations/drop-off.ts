import type { z } from 'zod';
import { paidAhead } from '../../core/books/paid-ahead.ts';
import { DRAWN_VIEWS } from '../../core/car/outline.ts';
import type { atTheDoor } from '../../core/contract/desk.ts';
import type { DropOffSlip, PaperMark } from '../../core/paper/drop-off.ts';
import { dropOffName, dropOffPdf } from '../../core/paper/pdf/drop-off-pdf.ts';
import { instantToWall } from '../../core/time/instant.ts';
import type { Context, Handlers } from '../context.ts';
import { currencyOf, settingsFor } from '../order/document.ts';
import { type Loaded, loadOrder } from '../order/load.ts';
import { loadFonts } from '../pdf.ts';
import { settingsOf } from '../people.ts';

/** The door of an order; orders from before a field was there lack it. */
type Door = Partial<z.output<typeof atTheDoor>>;

/** The marks that were seen at a visit, first drawn first. */
async function marksOf(context: Context, orderId: string): Promise<PaperMark[]> {
  const rows = await context.tx
    .selectFrom('car_mark')
    .innerJoin('car_mark_seen', 'car_mark_seen.car_mark_id', 'car_mark.id')
    .select(['car_mark.view', 'car_mark.x', 'car_mark.y', 'car_mark.words'])
    .where('car_mark_seen.work_order_id', '=', orderId)
    .orderBy('car_mark.id')
    .execute();
  return rows.map(({ view, ...mark }) => ({ ...mark, view: DRAWN_VIEWS.find((drawn) => drawn === view) ?? null }));
}

async function slipOf(context: Context, loaded: Loaded) {
  const { order, car, customer, booking, payments, decisions, people } = loaded;
  const settings = settingsFor(settingsOf(context), customer);
  const door = JSON.parse(order.door) as Door;
  const moment = (at: number) => instantToWall(at, settings.zone);
  const marks = await marksOf(context, order.id);
  const drawn = new Set(marks.map((mark) => mark.words));
  const invoice = loaded.papers.find((paper) => paper.kind === 'invoice');
  const deposit = paidAhead(payments, invoice?.issued_at ?? null);
  const slip: DropOffSlip = {
    ...{ practice: context.practice, language: settings.language, size: settings.paper },
    dateForm: settings.dateForm,
    notices: [settings.printed.storage, settings.printed.testDrive].filter((text) => text !== ''),
    currency: currencyOf(settings),
    garage: {
      ...{ name: settings.name, address: settings.address, phone: settings.phone, email: settings.email },
      ...{ registration: settings.registration, taxNumber: settings.taxNumber },
      logo: settings.logoPng === null ? null : { kind: 'png', base64: settings.logoPng },
    },
    ...{ madeAt: context.now, orderNumber: order.number, customer: customer.name, phone: customer.phone },
    car: { name: car.year === null ? car.words : `${car.words}, ${car.year}`, plate: car.plate, vin: car.vin },
    mileage: { unit: car.unit, in: order.mileage_in },
    came: order.arrived_at === null ? null : moment(order.arrived_at),
    booked: booking === null ? null : { date: booking.day, time: booking.from_time, bay: booking.bay },
    ...{ night: door.nightDrop ?? false, complaint: order.complaint },
    ...{ keys: door.keys ?? null, keysWhere: door.keysWhere ?? '', wheelLockKey: door.wheelLockKey ?? '' },
    ...{ fuel: door.fuel ?? '', valuables: door.valuables ?? '', oldParts: door.oldParts ?? 'unasked' },
    ...{ testDrive: door.testDrive ?? null, testDriveLimit: door.testDriveLimit ?? '' },
    yesUpTo: context.seesPrices ? (decisions.at(-1)?.ceiling ?? null) : null,
    deposit: context.seesPrices && deposit > 0 ? deposit : null,
    promise: order.promise_words,
    promiseAt: order.promise_at === null ? null : moment(order.promise_at),
    storage: context.seesPrices ? (door.storage ?? null) : null,
    storageTold: door.storageTold ?? false,
    ...{ shape: car.outline ?? (marks.length > 0 ? 'saloon' : null), marks },
    otherMarks: (door.marks ?? []).filter((words) => !drawn.has(words)),
    signature: door.strokes ?? null,
    by: people.get(order.opened_by)?.name ?? '',
  };
  return slip;
}

export const dropOffHandlers: Handlers = {
  'dropOff.pdf': async ({ orderId }, context) => {
    const slip = await slipOf(context, await loadOrder(context, orderId));
    const bytes = await dropOffPdf(slip, loadFonts());
    return { name: `${dropOffName(slip)}.pdf`, base64: Buffer.from(bytes).toString('base64') };
  },
};
