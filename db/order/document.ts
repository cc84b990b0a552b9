import type { z } from 'zod';
import { stageText } from '../../core/bench/stage.ts';
import type { atTheDoor } from '../../core/contract/desk.ts';
import { currencyDigits } from '../../core/money/currency.ts';
import type { SheetTotals } from '../../core/money/line.ts';
import { PASSED, type Stop } from '../../core/order/stops.ts';
import type {
  CreditNotePaper,
  InvoicePaper,
  PaperCommon,
  PaperCurrency,
  PaperJob,
  PaperSums,
  PaperTaken,
  PaperYes,
  QuotePaper,
  ReceiptPaper,
} from '../../core/paper/document.ts';
import { amountText } from '../../core/paper/figures.ts';
import { foundText } from '../../core/paper/found-text.ts';
import { type OldPartsSaid, paperWords } from '../../core/paper/words.ts';
import { civilDateOf, instantToWall } from '../../core/time/instant.ts';
import type { Context, Settings } from '../context.ts';
import type { CarRow, CustomerRow } from '../tables.ts';
import { dueAfter } from './due-after.ts';
import { findingFieldsOf } from './findings.ts';
import type { Loaded } from './load.ts';
import { paperJob } from './paper-job.ts';
import { letterOf, type Reckoned } from './reckon.ts';
import { stepsOf } from './steps.ts';

const SIGNS: Record<string, string> = { USD: 'US$', EUR: '€', GBP: '£' };

/** The door of an order as papers need it; orders from before a field was there lack it. */
type Door = Partial<z.output<typeof atTheDoor>>;

/** How sums are written on this shop's papers. */
export const currencyOf = (settings: Settings): PaperCurrency => ({
  code: settings.currency,
  sign: SIGNS[settings.currency] ?? settings.currency,
  digits: currencyDigits(settings.currency) ?? 2,
  decimal: settings.decimal,
  group: settings.group,
});

/** The shop's settings for a paper of this customer, who may want it in another language than the shop's own. */
export const settingsFor = (settings: Settings, { language }: Pick<CustomerRow, 'language'>): Settings =>
  language === 'en' || language === 'de' ? { ...settings, language } : settings;

/** The same for whoever an order's papers are made out to. */
export const settingsOfOrder = (settings: Settings, { payer, customer }: Loaded): Settings =>
  settingsFor(settings, payer ?? customer);

/** What every paper of this shop has. */
export function commonPaper(
  context: Context,
  settings: Settings,
  of: { number: number; orderNumber: number; billTo: CustomerRow; car: CarRow | null; po: string },
): PaperCommon {
  return {
    shape: 1,
    practice: context.practice,
    language: settings.language,
    dateForm: settings.dateForm,
    size: settings.paper,
    currency: currencyOf(settings),
    garage: {
      name: settings.name,
      address: settings.address,
      phone: settings.phone,
      email: settings.email,
      registration: settings.registration,
      taxNumber: settings.taxNumber,
      logo: settings.logoPng === null ? null : { kind: 'png', base64: settings.logoPng },
    },
    number: of.number,
    date: context.today,
    issuedAt: context.now,
    orderNumber: of.orderNumber,
    billTo: [of.billTo.name, ...(JSON.parse(of.billTo.address) as string[])],
    billToTaxNumber: of.billTo.tax_number,
    purchaseOrder: of.po,
    car: of.car
      ? {
          name: of.car.year === null ? of.car.words : `${of.car.words}, ${of.car.year}`,
          plate: of.car.plate,
          vin: of.car.vin,
        }
      : null,
  };
}

const common = (context: Context, settings: Settings, loaded: Loaded, number: number) =>
  commonPaper(context, settings, {
    number,
    orderNumber: loaded.order.number,
    billTo: loaded.payer ?? loaded.customer,
    car: loaded.order.counter_sale === 1 ? null : loaded.car,
    po: loaded.order.po_number,
  });

/** The sums block of a paper from its totals. */
export function paperSums(
  totals: SheetTotals,
  prices: 'exclusive' | 'inclusive',
  exempt: string,
  wasteWords: string,
): PaperSums {
  const kinds = totals.byKind;
  const rows = [
    { kind: 'labour' as const, hours: totals.labourHours, amount: kinds.labour as number },
    { kind: 'parts-and-fluids' as const, hours: null, amount: kinds.part + kinds.fluid },
    { kind: 'outside' as const, hours: null, amount: kinds.outside as number },
    { kind: 'supplies' as const, hours: null, amount: kinds.supplies + totals.supplies },
    { kind: 'fees' as const, hours: null, amount: kinds.fee as number },
    { kind: 'fees' as const, hours: null, amount: totals.wasteFee as number, words: wasteWords },
    { kind: 'core' as const, hours: null, amount: kinds.core as number },
  ];
  return {
    rows: rows.filter((row) => row.amount !== 0),
    discounts: totals.reckoning
      .filter(({ rule, result }) => rule === 'sheet-discount' && result !== 0)
      .map(({ on, result }) => ({ words: String(on.words ?? ''), amount: result })),
    prices,
    taxes: totals.taxes.map((row) => ({
      name: row.tax.name,
      ratePpm: row.tax.ratePpm,
      base: row.base,
      amount: row.amount,
      ...(row.oldUnits ? { oldUnits: row.oldUnits } : {}),
    })),
    exempt,
    net: totals.net,
    tax: totals.tax,
    total: totals.gross,
  };
}

function yesList(loaded: Loaded, zone: string): PaperYes[] {
  return loaded.decisions.flatMap((row): PaperYes[] => {
    if (row.ceiling === null) return [];
    const wall = instantToWall(row.at, zone);
    const letters = loaded.decided
      .filter((one) => one.decision_id === row.id && one.answer === 'yes')
      .map((one) => letterOf(loaded.allJobs.find((job) => job.id === one.job_id)?.place ?? 0));
    return [
      {
        at: { date: wall.date, time: wall.time.slice(0, 5) },
        way: row.way,
        name: row.spoken_name,
        reached: row.reached,
        upTo: row.ceiling,
        jobs: letters,
      },
    ];
  });
}

function declinedList(loaded: Loaded, reckoned: Reckoned, zone: string) {
  return reckoned.asideJobs.flatMap((job) => {
    const row = loaded.decided.findLast((one) => one.job_id === job.id);
    const decision = loaded.decisions.find((one) => one.id === row?.decision_id);
    if (!row || !decision || row.answer === 'yes') return [];
    return [
      {
        title: job.title,
        amount: row.amount,
        date: civilDateOf(decision.at, zone),
        unsafe: row.unsafe === 1,
        risk: row.risk,
      },
    ];
  });
}

/** A wish or an answer about the old parts in the paper's own words; '' where there is none. */
function oldPartsSentence(settings: Settings, said: string): string {
  const sentences = paperWords(settings.language).oldPartsSaid;
  return Object.hasOwn(sentences, said) ? sentences[said as OldPartsSaid] : '';
}

/** What leaving the car here will cost, where it was told at the door. */
function storageNotice(settings: Settings, door: Door): string[] {
  if (!door.storage) return [];
  const { currency, prices, language } = settings;
  const perDay = `${amountText(door.storage.perDay, currencyOf(settings))} ${currency}`;
  return [paperWords(language).storage(perDay, door.storage.freeWorkingDays, prices === 'exclusive')];
}

function shared(settings: Settings, loaded: Loaded, reckoned: Reckoned) {
  const { order } = loaded;
  const arrived = order.arrived_at === null ? null : civilDateOf(order.arrived_at, settings.zone);
  const supplies =
    settings.supplies.mode === 'percent' && reckoned.totals.supplies !== 0 ? [settings.supplies.sentence] : [];
  return {
    arrived,
    complaint: order.complaint,
    found: loaded.findings
      .map((row) => foundText(findingFieldsOf(row), settings.language, currencyOf(settings)))
      .join(' '),
    jobs: reckoned.inSum.map((job) => paperJob(job, loaded, reckoned)),
    sums: paperSums(
      reckoned.totals,
      settings.prices,
      (loaded.payer ?? loaded.customer).tax_exempt,
      reckoned.rules.wasteFee?.words ?? '',
    ),
    yes: yesList(loaded, settings.zone),
    declined: declinedList(loaded, reckoned, settings.zone),
    warranty: [settings.warranty, settings.warrantyExclusions].filter((text) => text !== '').join(' '),
    notices: [settings.printed.labourBasis, settings.printed.oldParts, ...settings.notices, ...supplies].filter(
      (text) => text !== '',
    ),
  };
}

export function quotePaper(
  context: Context,
  shop: Settings,
  loaded: Loaded,
  reckoned: Reckoned,
  of: { number: number; version: number; validUntil: string },
): QuotePaper {
  const settings = settingsOfOrder(shop, loaded);
  const { arrived, ...rest } = shared(settings, loaded, reckoned);
  const door = JSON.parse(loaded.order.door) as Door;
  return {
    ...common(context, settings, loaded, of.number),
    ...rest,
    kind: 'quote',
    version: of.version,
    validUntil: of.validUntil,
    mileage: { unit: loaded.car.unit, in: loaded.order.mileage_in, out: null },
    dates: { in: arrived },
    offered: reckoned.asideJobs.filter((job) => job.offered === 1).map((job) => paperJob(job, loaded, reckoned)),
    oldParts: oldPartsSentence(settings, door.oldParts ?? ''),
    notices: [...rest.notices, settings.printed.storage, ...storageNotice(settings, door)].filter(
      (text) => text !== '',
    ),
  };
}

/** What was in the way of an invoice and was let pass, as its paper says it. */
export function passedWords(settings: Settings, stop: Stop): string {
  const what = PASSED.find((one) => one === stop.what);
  return what === undefined ? stop.what : paperWords(settings.language).letPassWhat[what](stop.with);
}

export interface Override {
  readonly what: string;
  readonly reason: string;
  readonly by: string;
}

export function invoicePaper(
  context: Context,
  shop: Settings,
  loaded: Loaded,
  reckoned: Reckoned,
  of: {
    number: number;
    dueOn: string;
    taken: PaperTaken[];
    cashRounding: number;
    toPay: number;
    overrides: Override[];
  },
): InvoicePaper {
  const settings = settingsOfOrder(shop, loaded);
  const { arrived, ...rest } = shared(settings, loaded, reckoned);
  const tightened = reckoned.inSum.flatMap((job) =>
    stepsOf(loaded, job.id).flatMap(({ step, last }) => {
      const final = step.torque?.stages.at(-1);
      if (!step.torque || last?.state !== 'done' || final === undefined) return [];
      return [{ what: step.torque.what || step.do, figure: `${'degrees' in final ? '+' : ''}${stageText(final)}` }];
    }),
  );
  return {
    ...common(context, settings, loaded, of.number),
    ...rest,
    kind: 'invoice',
    mileage: { unit: loaded.car.unit, in: loaded.order.mileage_in, out: loaded.order.mileage_out },
    dates: {
      in: arrived,
      out:
        loaded.order.handed_over_at === null ? context.today : civilDateOf(loaded.order.handed_over_at, settings.zone),
    },
    taken: of.taken,
    cashRounding: of.cashRounding,
    toPay: of.toPay,
    payBy: of.dueOn,
    payTerms: '',
    tightened,
    overrides: of.overrides,
    oldParts: oldPartsSentence(settings, loaded.order.old_parts_answer),
    nextDue: dueAfter(loaded, reckoned, settings, context.today).map(({ words, on, shows }) => ({
      ...{ what: words, date: on, mileage: shows },
    })),
  };
}

export function creditPaper(
  context: Context,
  shop: Settings,
  loaded: Loaded,
  of: { number: number; corrects: { number: number; date: string }; reason: string; jobs: PaperJob[]; sums: PaperSums },
): CreditNotePaper {
  return {
    ...common(context, settingsOfOrder(shop, loaded), loaded, of.number),
    kind: 'credit-note',
    corrects: of.corrects,
    reason: of.reason,
    jobs: of.jobs,
    sums: of.sums,
    settlement: '',
    notices: [],
  };
}

export function receiptPaper(
  context: Context,
  shop: Settings,
  loaded: Loaded,
  of: Omit<ReceiptPaper, keyof PaperCommon | 'kind' | 'notices' | 'cash'> & { number: number },
): ReceiptPaper {
  const { number, ...rest } = of;
  return {
    ...common(context, settingsOfOrder(shop, loaded), loaded, number),
    ...rest,
    kind: 'receipt',
    cash: null,
    notices: [],
  };
}
