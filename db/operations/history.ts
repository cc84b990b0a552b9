import { amountText, quantityText, wholeText } from '../../core/paper/figures.ts';
import { type HistoryVisit, writeHistory } from '../../core/paper/history.ts';
import { paperWords } from '../../core/paper/words.ts';
import type { DateForm } from '../../core/time/date-form.ts';
import { civilDateOf } from '../../core/time/instant.ts';
import type { Context, Handlers } from '../context.ts';
import { letterPdfOf } from '../letter.ts';
import { currencyOf } from '../order/document.ts';
import { loadOrder } from '../order/load.ts';
import { reckonOrder } from '../order/reckon.ts';
import { settingsOf } from '../people.ts';
import { notFound } from '../refusal.ts';
import { ownerOf } from '../reminders.ts';

/** What a history tells, and in which language. */
interface Telling {
  readonly language: 'en' | 'de';
  readonly dateForm: DateForm;
  readonly unit: string;
  /** With what each job came to. */
  readonly prices: boolean;
  /** To somebody who did not own the car then: the work, the dates and the mileage, never the person. */
  readonly toOther: boolean;
}

/** A visit with the day it is told at. */
interface Told {
  readonly on: string;
  readonly visit: HistoryVisit;
}

/** Whether somebody wished that what was done for them is kept back from later owners. */
const keepsBack = (consents: string | null) =>
  consents !== null && (JSON.parse(consents) as { history: boolean | null }).history === false;

/** One order as a visit; null for one without work. */
async function visitOf(context: Context, orderId: string, telling: Telling): Promise<Told | null> {
  const settings = settingsOf(context);
  const currency = currencyOf(settings);
  const loaded = await loadOrder(context, orderId);
  const reckoned = reckonOrder(loaded, settings);
  const { order } = loaded;
  const invoice = loaded.papers.find((paper) => paper.kind === 'invoice');
  if (order.cancelled_at !== null || (reckoned.inSum.length === 0 && loaded.findings.length === 0)) return null;
  const on = civilDateOf(order.arrived_at ?? order.opened_at, settings.zone);
  const mileage = order.mileage_out ?? order.mileage_in;
  const { prices, toOther } = telling;
  const visit: HistoryVisit = {
    date: paperWords(telling.language, telling.dateForm).date(on, false),
    mileage: mileage === null ? '' : `${wholeText(mileage, currency)} ${telling.unit}`,
    order: order.number,
    invoice: toOther || invoice === undefined ? null : invoice.number,
    complaint: toOther ? '' : order.complaint,
    found: loaded.findings.filter((row) => row.text !== '').map((row) => row.text),
    jobs: reckoned.inSum.map((job) => ({
      title: job.title,
      amount: prices ? `${amountText(reckoned.totals.jobs.get(job.id) ?? 0, currency)} ${settings.currency}` : '',
      parts: loaded.lines
        .filter((line) => line.job_id === job.id && (line.kind === 'part' || line.kind === 'fluid'))
        .map((line) =>
          [`${quantityText(line.quantity, currency)} ${line.unit}`.trim(), line.words, line.part_number]
            .filter((text) => text !== '')
            .join(' '),
        ),
    })),
    declined: reckoned.asideJobs.map((job) => job.title),
    replaced: null,
  };
  return { on, visit };
}

/** Visits of before the program, and clocks that were replaced. */
async function otherEvents(context: Context, carId: string, telling: Telling): Promise<Told[]> {
  const currency = currencyOf(settingsOf(context));
  const bare = { order: null, invoice: null, complaint: '', found: [], jobs: [], declined: [], replaced: null };
  const shown = (distance: number | null) =>
    distance === null ? '' : `${wholeText(distance, currency)} ${telling.unit}`;
  const date = (day: string) => paperWords(telling.language, telling.dateForm).date(day, false);
  const past = await context.tx.selectFrom('past_visit').selectAll().where('car_id', '=', carId).execute();
  const clocks = await context.tx
    .selectFrom('odometer_reading')
    .selectAll()
    .where('car_id', '=', carId)
    .where('event', '=', 'replaced')
    .execute();
  return [
    ...past.map((row) => {
      const amount =
        telling.prices && row.amount !== null
          ? `${amountText(row.amount, currency)} ${settingsOf(context).currency}`
          : '';
      const jobs = [{ title: row.words, amount, parts: [] }];
      return { on: row.on_day, visit: { ...bare, date: date(row.on_day), mileage: shown(row.mileage), jobs } };
    }),
    ...clocks.map((row) => {
      const replaced = { old: shown(row.reading), start: shown(row.new_start ?? 0) };
      return { on: row.on_day, visit: { ...bare, date: date(row.on_day), mileage: '', replaced } };
    }),
  ];
}

export const historyHandlers: Handlers = {
  'car.history': async ({ id, prices, reader }, context) => {
    const settings = settingsOf(context);
    const car = await context.tx.selectFrom('car').selectAll().where('id', '=', id).executeTakeFirst();
    if (!car) throw notFound('car', id);
    const owner = await ownerOf(context, id);
    const language = owner?.language === 'de' || owner?.language === 'en' ? owner.language : settings.language;
    const toOther = reader === 'later-owner';
    const telling: Telling = {
      language,
      dateForm: settings.dateForm,
      unit: car.unit,
      prices: prices && !toOther && context.seesPrices,
      toOther,
    };
    const orders = await context.tx
      .selectFrom('work_order')
      .innerJoin('customer', 'customer.id', 'work_order.customer_id')
      .select(['work_order.id', 'work_order.customer_id', 'customer.consents'])
      .where('car_id', '=', id)
      // An order for the storage after a visit tells nothing of the car.
      .where('storage_of', 'is', null)
      .execute();
    let keptBack = 0;
    const told = await otherEvents(context, id, telling);
    for (const order of orders) {
      // What was done for somebody else is told without that person, and not at all where they wished it so.
      const theirs = toOther || order.customer_id !== owner?.id;
      const visit = await visitOf(context, order.id, {
        ...telling,
        ...{ toOther: theirs, prices: telling.prices && !theirs },
      });
      if (visit === null) continue;
      if (theirs && keepsBack(order.consents)) keptBack += 1;
      else told.push(visit);
    }
    told.sort((a, b) => a.on.localeCompare(b.on));
    const plates = { car: car.year === null ? car.words : `${car.words}, ${car.year}`, plate: car.plate, vin: car.vin };
    const { subject, text } = writeHistory({ ...plates, visits: told.map((one) => one.visit), keptBack }, language);
    const to = toOther || owner === null ? { name: '', address: '[]' } : owner;
    const bytes = await letterPdfOf(context, { customer: to, language, subject, text });
    const name = `${[car.plate, car.words].filter((one) => one !== '').join(' ')}.pdf`;
    return { name, base64: Buffer.from(bytes).toString('base64'), visits: told.length, keptBack };
  },
};
